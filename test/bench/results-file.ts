import { cpus, platform, release, totalmem } from "node:os";
import type { BenchRow } from "./bench-row.ts";

/** Rows of one bench. */
export interface BenchTable {
  readonly title: string;
  readonly rows: readonly BenchRow[];
}

/** The table as text for a terminal. */
export function asText(table: BenchTable): string {
  const lines = table.rows.map(
    (row) => `  ${row.name.padEnd(72)} ${shown(row).padStart(14)}  ${row.target.padEnd(16)} ${verdict(row)}`,
  );
  return [table.title, ...lines].join("\n");
}

/** All tables as the results file: machine, Node version and date first, since numbers mean little without. */
export function asMarkdown(tables: readonly BenchTable[], command: string, date: Date): string {
  const head = [
    "# Measured results",
    "",
    `Written by \`${command}\` on ${date.toISOString().slice(0, 10)}. ${machineSentence()}`,
    "Every shop is made by the seeded generator in this folder; seeds are in the names. A gap is the cost over the proven bound.",
  ];
  return [...head, ...tables.flatMap(tableLines), ""].join("\n");
}

function tableLines({ title, rows }: BenchTable): string[] {
  return [
    "",
    `## ${title}`,
    "",
    "| measured | value | target | met |",
    "| --- | ---: | --- | --- |",
    ...rows.map((row) => `| ${row.name} | ${shown(row)} | ${row.target} | ${verdict(row)} |`),
  ];
}

function machineSentence(): string {
  const model = cpus()[0]?.model.trim() ?? "unknown processor";
  const memoryGb = (totalmem() / 1024 ** 3).toFixed(1);
  return `Machine: ${model}, ${cpus().length} cores, ${memoryGb} GB, ${platform()} ${release()}; Node ${process.versions.node}.`;
}

function shown({ value, unit }: BenchRow): string {
  const digits = Math.abs(value) >= 1000 ? 0 : Math.abs(value) >= 100 ? 1 : 3;
  return `${Number(value.toFixed(digits))} ${unit}`.trim();
}

function verdict({ met }: BenchRow): string {
  if (met === null) return "";
  return met ? "yes" : "**no**";
}
