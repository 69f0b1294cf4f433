import { For, type JSX, Show } from "solid-js";
import type { FeedstockNeed } from "../../../core/plan/write/feedstock-needs.ts";
import { CAUTIONS } from "../../../core/report/words.ts";
import type { Feedstock } from "../../../core/shop/feedstock.ts";
import { whereOf } from "../../../core/shop/finding.ts";
import { EntryGroups, FieldGroup } from "../../components/entry/entry-fields.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { KeyValues } from "../../components/key-values.tsx";
import { NameText } from "../../components/name-text.tsx";
import type { EntryEdits } from "../../store/entry-edits.ts";
import { useStores } from "../../store/stores.ts";
import type { FeedstockColumns } from "./feedstock-columns.tsx";

interface FeedstockPanelProps {
  readonly feedstock: Feedstock;
  readonly need: FeedstockNeed | undefined;
  readonly columns: FeedstockColumns;
  readonly edits: EntryEdits<"feedstocks">;
}

/** Everything of the chosen grade, what the plan needs of it, and the cautions that go with it. */
export function FeedstockPanel(props: FeedstockPanelProps): JSX.Element {
  const { shop, plan, selection } = useStores();
  const findings = () => shop.findingsAt(whereOf("feedstocks", props.feedstock.id));
  const put = (next: Feedstock, what: string): void => {
    const before = props.feedstock.id;
    props.edits.put(before, next, what);
    if (next.id !== before) selection.choose({ feedstockId: next.id });
  };
  return (
    <>
      <h2 class="side-title">
        <NameText text={props.feedstock.name} most={60} />
      </h2>
      <Show when={findings().length > 0}>
        <FindingList findings={findings()} />
      </Show>
      <FieldGroup title="In this plan">
        <Show
          when={props.need}
          fallback={
            <p class="quiet">{plan.plan() ? "The plan needs none of it." : "Nothing is planned yet."}</p>
          }
        >
          {(need) => <Need need={need()} />}
        </Show>
      </FieldGroup>
      <EntryGroups
        row={props.feedstock}
        groups={props.columns.groups}
        onPut={put}
        findingAt={props.edits.findingAtField}
      />
      <FieldGroup title="Cautions">
        <For each={cautionsOf(props.feedstock)}>
          {({ title, text }) => (
            <p class="caution">
              <b>{title}.</b> {text}
            </p>
          )}
        </For>
      </FieldGroup>
    </>
  );
}

function Need(props: { readonly need: FeedstockNeed }): JSX.Element {
  const { format } = useStores();
  const most = (): number => Math.max(props.need.needKg, props.need.stockKg);
  const pct = (massKg: number): string => `${most() > 0 ? (100 * massKg) / most() : 0}%`;
  const covered = (): number => Math.min(props.need.needKg, props.need.stockKg);
  return (
    <>
      <KeyValues
        pairs={[
          { name: "The plan needs", value: format().massText(props.need.needKg) },
          { name: "In stock", value: format().massText(props.need.stockKg) },
          {
            name: "To buy",
            value:
              props.need.packs === 0
                ? "nothing"
                : `${format().massText(props.need.buyKg)}, ${format().number(props.need.packs, 0)} ${props.need.packs === 1 ? "pack" : "packs"}`,
          },
          { name: "Order by", value: props.need.orderBy ? format().dateTime(props.need.orderBy) : "no need" },
        ]}
      />
      <svg class="need-bar" width="100%" height="16" aria-hidden="true">
        <rect class="bar-track" y="3" width="100%" height="10" />
        <rect class="bar-fill" y="3" width={pct(covered())} height="10" />
        <rect
          class="bar-lack"
          y="3"
          x={pct(covered())}
          width={pct(props.need.needKg - covered())}
          height="10"
        />
      </svg>
      <p class="quiet need-key">
        {props.need.needKg > props.need.stockKg
          ? "Solid: stock covers it; outlined: stock does not."
          : "Solid: what the plan takes out of stock."}
      </p>
      <p>
        <bdi>{props.need.note}</bdi>
      </p>
    </>
  );
}

/** Families whose fumes and heat ask for more attention, plain or filled: common practice, no source. */
const STRONG_FUMES = /(^|[^A-Z])(ABS|ASA|HIPS|PS|PA\d*|PC|PEI|PEEK|PPS|TPU)([^A-Z]|$)/i;

/** Which of the program's cautions go with a grade; the words are those of the printed sheet. */
function cautionsOf({ dryH, dryC, family }: Feedstock): { readonly title: string; readonly text: string }[] {
  const fumes = STRONG_FUMES.test(family) ? `${family} is one of the grades that give off more. ` : "";
  return [
    ...(dryH > 0
      ? [
          {
            title: "Dryers",
            text: `It is dried ${dryH} h at ${dryC} °C. ${cautionText("Dryers")} Leaving a dryer on with nobody there is the works' decision, by the maker's instructions, local fire rules and a qualified person.`,
          },
        ]
      : []),
    { title: "Fumes and fine particles", text: fumes + cautionText("Fumes and fine particles") },
    { title: "Heat", text: cautionText("Heat") },
  ];
}

function cautionText(title: string): string {
  return CAUTIONS.find((caution) => caution.title === title)?.text ?? "";
}
