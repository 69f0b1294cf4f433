/** Reads yes and no as people, spreadsheets and other programs write them; null: neither. */
export function readYesNo(text: string): boolean | null {
  const word = text.trim().toLowerCase();
  if (["yes", "y", "true", "1", "x", "✓", "ja", "oui", "si", "sí"].includes(word)) return true;
  if (["no", "n", "false", "0", "", "-", "nein", "non"].includes(word)) return false;
  return null;
}

/** What somebody typed, short enough for a sentence. */
export function quoted(text: string): string {
  const MOST = 40;
  return `"${text.length > MOST ? `${text.slice(0, MOST)}…` : text}"`;
}
