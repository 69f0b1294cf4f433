import { base64 } from "./base64.ts";
import { type Html, html, verbatim } from "./html-escape.ts";
import { utf8Bytes } from "./plain-text.ts";
import { sha256 } from "./sha256.ts";

/** What a sheet is made of. */
export interface SheetPage {
  readonly title: string;
  /** style of this program, never text of a document */
  readonly style: string;
  readonly body: Html;
}

/**
 * One HTML document that needs nothing else: no script, no font, no picture from outside, and a content security policy that admits
 * only its own style sheet, by hash (W3C, Content Security Policy Level 3). Example: a sheet of 40 kB opens without a network.
 */
export function sheetPage({ title, style, body }: SheetPage): string {
  return html`<!doctype html>
<html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${contentPolicy(style)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${title}</title>
<style>${verbatim(style)}</style></head>
<body>${body}</body></html>
`.markup;
}

function contentPolicy(style: string): string {
  const hash = base64(sha256(utf8Bytes(style)));
  return `default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`;
}
