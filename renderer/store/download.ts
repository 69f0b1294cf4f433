/** Hands a file to the browser to keep. */
export function downloadFile(name: string, content: BlobPart, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the address when the click returns; it is let go a little later to be on the safe side.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** Asks for one file with the browser's own dialog; null: none was chosen. Example: chooseFile(".csv,.xlsx"). */
export function chooseFile(accept: string): Promise<File | null> {
  return new Promise((resolve) => {
    const input = document.createElement("input");
    input.type = "file";
    input.accept = accept;
    input.addEventListener("change", () => resolve(input.files?.[0] ?? null));
    input.addEventListener("cancel", () => resolve(null));
    input.click();
  });
}
