import { access } from "node:fs/promises";
import { join } from "node:path";

const LONGEST = 80;

/**
 * A name that every system takes as a file name: what some cannot have is left out. Names reserved on Windows get a line
 * in front. Example: 'My: shop/2' gives "My shop 2"; "con" gives "_con"; "" gives "shop".
 */
export function plainFileName(name: string): string {
  const plain = name
    .normalize("NFC")
    .replaceAll(/[<>:"/\\|?*\p{Cc}\p{Cf}]+/gu, " ")
    .replaceAll(/\s+/g, " ")
    .slice(0, LONGEST)
    .replaceAll(/^[. ]+|[. ]+$/g, "");
  if (plain === "") return "shop";
  return /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i.test(plain) ? `_${plain}` : plain;
}

/** A path in the folder at which nothing is yet. Example: where "a.stl" is there, "a 2.stl". */
export async function freePath(folder: string, name: string): Promise<string> {
  const dot = name.search(/(\.[a-z0-9]{1,5}){1,2}$/i);
  const [stem, ending] = dot > 0 ? [name.slice(0, dot), name.slice(dot)] : [name, ""];
  for (let count = 1; ; count++) {
    const path = join(folder, `${stem}${count === 1 ? "" : ` ${count}`}${ending}`);
    const isFree = await access(path).then(
      () => false,
      () => true,
    );
    if (isFree) return path;
  }
}
