import { type BenchCall, type BenchRow, atLeast, told } from "./bench-row.ts";
import { runCommand } from "./run-command.ts";

/** The laws of test/laws, each held against 1000 random shops; with `quick` against as many as the tests take. */
export async function benchLaws({ quick, say }: BenchCall): Promise<BenchRow[]> {
  if (!quick) process.env["LAWS"] = "full";
  const end = await runCommand("npx", ["vitest", "run", "test/laws", "--reporter=json"], [0, 1]);
  const report = JSON.parse(end.stdout.slice(end.stdout.indexOf("{"))) as VitestReport;
  for (const file of report.testResults) {
    for (const { fullName, status, failureMessages } of file.assertionResults) {
      if (status === "failed") say(`broken: ${fullName}: ${failureMessages[0]?.split("\n")[0] ?? ""}`);
    }
  }
  return [
    atLeast("laws that hold", report.numPassedTests, `of ${report.numTotalTests}`, report.numTotalTests),
    told("time", end.seconds, "s"),
  ];
}

interface VitestReport {
  readonly numTotalTests: number;
  readonly numPassedTests: number;
  readonly testResults: readonly {
    readonly assertionResults: readonly {
      readonly fullName: string;
      readonly status: string;
      readonly failureMessages: readonly string[];
    }[];
  }[];
}
