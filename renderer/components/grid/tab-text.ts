/**
 * Reads what a spreadsheet puts on the clipboard: columns parted by tabs, rows by line ends, and cells in quotes where they
 * hold a tab, a line end or a quote (doubled). Rows may differ in length. Example: `a\t"b\n""c"""` gives [["a", 'b\n"c"']].
 */
export function readTabText(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let place = 0;
  while (place <= text.length) {
    const cell = readCell(text, place);
    row.push(cell.text);
    place = cell.end;
    const next = text.charAt(place);
    if (next !== "\t") {
      rows.push(row);
      row = [];
      place += text.startsWith("\r\n", place) ? 1 : 0;
    }
    place += 1;
    // The line end behind the last row starts no row of its own.
    if (place >= text.length && next !== "\t") break;
  }
  return rows;
}

/** Writes rows so that a spreadsheet and `readTabText` read the same again. Example: [["a", "b\n"]] gives `a\t"b\n"`. */
export function writeTabText(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => row.map(quoted).join("\t")).join("\n");
}

function quoted(text: string): string {
  return /[\t\r\n]|^"/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

interface ReadCell {
  readonly text: string;
  readonly end: number;
}

/** A cell that starts with a quote ends at the next lone one before a tab, a line end or the end; else the quote is text. */
function readCell(text: string, start: number): ReadCell {
  if (text.charAt(start) === '"') {
    for (let place = start + 1; place < text.length; place += 1) {
      if (text.charAt(place) !== '"') continue;
      if (text.charAt(place + 1) === '"') place += 1;
      else if (place + 1 === text.length || /[\t\r\n]/.test(text.charAt(place + 1))) {
        return { text: text.slice(start + 1, place).replaceAll('""', '"'), end: place + 1 };
      } else break;
    }
  }
  const stop = /[\t\r\n]/g;
  stop.lastIndex = start;
  const end = stop.exec(text)?.index ?? text.length;
  return { text: text.slice(start, end), end };
}
