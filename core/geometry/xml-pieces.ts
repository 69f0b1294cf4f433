import { DecodeUTF8 } from "fflate";
import { SaxesParser, type SaxesTagNS } from "saxes";
import { ReadStop } from "./body-reading.ts";

/** Who is told of the elements of an XML part, in their order. */
export interface XmlListener {
  readonly open: (tag: SaxesTagNS) => void;
  readonly close: () => void;
}

const DEEPEST = 100;
/** No element of a 3MF is longer; a longer one would fill the memory before it is told. */
const LONGEST_ELEMENT = 8_000_000;
const FIRST_BYTE_OF_UTF16 = [0xfe, 0xff];

/** Reads the XML of one part of a package in pieces, as they are unpacked: UTF-8 only, no document type. */
export class XmlPieces {
  readonly #part: string;
  readonly #parser = new SaxesParser({ xmlns: true });
  readonly #decoder: DecodeUTF8;
  #hasBegun = false;
  #depth = 0;
  /** characters since the last element began or ended */
  #quiet = 0;

  constructor(part: string, listener: XmlListener) {
    this.#part = part;
    this.#decoder = new DecodeUTF8((text) => this.#read(text));
    this.#parser.on("error", ({ message }) =>
      this.#stop("damaged-xml", `the XML is damaged (${message.replace(/^\d+:\d+: /, "")}); save it again`),
    );
    this.#parser.on("doctype", () =>
      this.#stop("document-type", "it has a document type declaration, which 3MF forbids; save it again"),
    );
    this.#parser.on("xmldecl", ({ encoding }) => this.#refuseEncoding(encoding ?? "UTF-8"));
    this.#parser.on("opentag", (tag) => {
      this.#quiet = 0;
      if (++this.#depth > DEEPEST)
        this.#stop("damaged-xml", `more than ${DEEPEST} elements lie in each other`);
      listener.open(tag);
    });
    this.#parser.on("closetag", () => {
      this.#quiet = 0;
      this.#depth--;
      listener.close();
    });
  }

  write(piece: Uint8Array): void {
    const [first] = piece;
    if (first === undefined) return;
    if (!this.#hasBegun && FIRST_BYTE_OF_UTF16.includes(first)) this.#refuseEncoding("UTF-16");
    this.#hasBegun = true;
    this.#decoder.push(piece);
  }

  /** Tells that nothing follows: stops the reading where elements are still open. */
  end(): void {
    this.#parser.close();
  }

  #read(text: string): void {
    this.#quiet += text.length;
    this.#parser.write(text);
    if (this.#quiet > LONGEST_ELEMENT) this.#stop("damaged-xml", "an element or text in it has no end");
  }

  #refuseEncoding(encoding: string): void {
    if (/^utf-?8$/i.test(encoding)) return;
    this.#stop(
      "not-utf-8",
      `it is written in ${encoding.slice(0, 20)}, but 3MF allows UTF-8 only; save it again`,
    );
  }

  #stop(code: string, what: string): never {
    throw new ReadStop(code, `its part ${this.#part}, line ${this.#parser.line}: ${what}`);
  }
}
