import { emptyLine, isBlank, type QuoteRequest, type RequestLine } from "./request.ts";

/** Edits of a request as it is typed. Lines go by their keys. */
export interface RequestEdits {
  readonly setHead: (part: Partial<Omit<QuoteRequest, "lines">>) => void;
  readonly setLine: (key: number, part: Partial<RequestLine>) => void;
  readonly addLine: () => void;
  /** behind the others; blank ones fall away */
  readonly addLines: (lines: readonly RequestLine[]) => void;
  readonly replaceLine: (key: number, lines: readonly RequestLine[]) => void;
  /** the last line that is left is emptied instead */
  readonly removeLine: (key: number) => void;
}

/** Edits of the request that `request` gives; `put` takes it as it is then. */
export function requestEdits(request: () => QuoteRequest, put: (next: QuoteRequest) => void): RequestEdits {
  const setLines = (lines: readonly RequestLine[]): void => put({ ...request(), lines });
  const replaceLine = (key: number, lines: readonly RequestLine[]): void =>
    setLines(request().lines.flatMap((line) => (line.key === key ? lines : [line])));
  return {
    setHead: (part) => put({ ...request(), ...part }),
    setLine: (key, part) =>
      setLines(request().lines.map((line) => (line.key === key ? { ...line, ...part } : line))),
    addLine: () => setLines([...request().lines, emptyLine()]),
    addLines: (lines) => setLines([...request().lines.filter((line) => !isBlank(line)), ...lines]),
    replaceLine,
    removeLine: (key) => (request().lines.length > 1 ? replaceLine(key, []) : setLines([emptyLine()])),
  };
}
