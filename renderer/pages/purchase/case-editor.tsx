import { createSignal, type JSX } from "solid-js";
import type { Finding } from "../../../core/shop/finding.ts";
import { FieldGroup } from "../../components/entry/entry-fields.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { Tabs } from "../../components/tabs.tsx";
import { CandidateList } from "./candidate-list.tsx";
import { DemandEditor, type EditorProps, Fields } from "./demand-editor.tsx";

const OF_DEMAND = ["demand", "growthPctPerYear", "patienceWeeks", "seasonByMonth"];
const OF_TIME = ["startsOn", "weeks", "scenarios", "seed"];
const OF_MONEY = ["financing", "budget"];
const OF_VALUING = ["assumedMarginPct", "givenRateCashPct"];

/** The case: what could be bought or done, against what demand, by what money. */
export function CaseEditor(props: EditorProps): JSX.Element {
  const [tab, setTab] = createSignal("candidates");
  const at = (fields: readonly string[]): readonly Finding[] =>
    fields.flatMap((field) => props.state.findingsAt(field));
  /** the title with a mark where something has to be corrected */
  const marked = (title: string, fields: readonly string[]): string => {
    const errors = at(fields).filter(({ severity }) => severity === "error").length;
    return errors === 0 ? title : `${title} ✕`;
  };
  return (
    <Tabs
      label="About the case"
      value={tab()}
      onChange={setTab}
      tabs={[
        {
          id: "candidates",
          get title() {
            return marked("Candidates", ["candidates"]);
          },
          content: () => <CandidateList {...props} />,
        },
        {
          id: "demand",
          get title() {
            return marked("Demand", OF_DEMAND);
          },
          content: () => (
            <div class="purchase-stack">
              <DemandEditor {...props} />
            </div>
          ),
        },
        {
          id: "money",
          get title() {
            return marked("Money and time", [...OF_TIME, ...OF_MONEY, ...OF_VALUING]);
          },
          content: () => (
            <div class="purchase-stack">
              <Group {...props} title="Money" columns={props.fields.financing} findings={at(OF_MONEY)} />
              <Group {...props} title="Weeks and chance" columns={props.fields.time} findings={at(OF_TIME)} />
              <Group
                {...props}
                title="What is valued how"
                columns={props.fields.valuing}
                findings={at(OF_VALUING)}
              />
              <Group {...props} title="Name and note" columns={props.fields.names} findings={[]} />
            </div>
          ),
        },
      ]}
    />
  );
}

interface GroupProps extends EditorProps {
  readonly title: string;
  readonly columns: Parameters<typeof Fields>[0]["columns"];
  readonly findings: readonly Finding[];
}

function Group(props: GroupProps): JSX.Element {
  return (
    <FieldGroup title={props.title}>
      <div class="purchase-stack">
        <Fields {...props} />
        <FindingList findings={props.findings} />
      </div>
    </FieldGroup>
  );
}
