import { withoutTurns } from "./plain-text.ts";

/** A piece of HTML that is known to be well formed: made by `html`, never from text of a document. */
export interface Html {
  readonly markup: string;
}

type Piece = string | number | Html | readonly Html[];

/**
 * A template whose values are escaped unless they are HTML made the same way, so that no text of a document can become
 * markup, in an element or in a quoted attribute. Example: html`<b>${"<i>"}</b>` gives "<b>&lt;i&gt;</b>".
 */
export function html(strings: TemplateStringsArray, ...pieces: readonly Piece[]): Html {
  const markup = strings.map((part, index) => {
    const piece = pieces[index];
    return piece === undefined ? part : part + markupOf(piece);
  });
  return { markup: markup.join("") };
}

/** Nothing, where a piece is optional. */
export const nothing: Html = { markup: "" };

/** A piece if a condition holds, else nothing. */
export function when(condition: boolean, piece: () => Html): Html {
  return condition ? piece() : nothing;
}

/** Fixed text of this program that must stay as it is: the style sheet. Never pass text of a document. */
export function verbatim(text: string): Html {
  return { markup: text };
}

function markupOf(piece: Piece): string {
  if (typeof piece === "object") {
    return "markup" in piece ? piece.markup : piece.map((entry) => entry.markup).join("");
  }
  return escapedText(String(piece));
}

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/**
 * Characters that HTML does not allow even as entities (controls, lone surrogates) become the replacement character; those
 * that turn the reading direction round are written out, since no element isolates the text of an attribute.
 */
function escapedText(text: string): string {
  return withoutTurns(text)
    .replace(/[&<>"']/g, (char) => ENTITIES[char] ?? char)
    .replace(/[\p{Cs}\ufffe\uffff]|(?![\t\n\r])\p{Cc}/gu, "\ufffd");
}
