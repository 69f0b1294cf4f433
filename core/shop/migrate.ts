import type { Finding } from "./finding.ts";
import { SHOP_SCHEMA } from "./shop.ts";

export type RawDocument = Readonly<Record<string, unknown>>;

/** Steps by the schema number they start from; each gives a document of the next number. */
export type Migrations = Readonly<Record<number, (document: RawDocument) => RawDocument>>;

/** No older shop document was ever given out, so there is nothing to migrate from yet. */
const SHOP_MIGRATIONS: Migrations = {};

export type Migrated = { readonly document: RawDocument } | { readonly finding: Finding };

/**
 * Brings a shop document to the schema number of this version, one step at a time. A document without a number, a newer one
 * and one that no step leads on from are refused with a sentence; nothing is changed in place.
 * Example: with steps from 0 to 1 and from 1 to 2, a document of number 0 goes through both.
 */
export function migrate(
  document: RawDocument,
  migrations: Migrations = SHOP_MIGRATIONS,
  current: number = SHOP_SCHEMA,
): Migrated {
  const number = document["schema"];
  if (typeof number !== "number" || !Number.isInteger(number) || number < 0) {
    return refused("schema-missing", `The file does not say which version it has: add "schema": ${current}.`);
  }
  if (number > current) {
    return refused(
      "schema-newer",
      `The file has schema ${number}, this version reads up to ${current}: update the program, or ask for the file in the older form.`,
    );
  }
  if (number === current) return { document };
  const step = migrations[number];
  if (!step) {
    return refused(
      "schema-unknown",
      `The file has schema ${number}, which this version cannot read: it reads schema ${current}.`,
    );
  }
  return migrate({ ...step(document), schema: number + 1 }, migrations, current);
}

function refused(code: string, sentence: string): Migrated {
  return { finding: { severity: "error", code, where: "schema", sentence } };
}
