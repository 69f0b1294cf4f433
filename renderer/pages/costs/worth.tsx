import { For, type JSX } from "solid-js";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { capital, lateOrders, unplannedCopies } from "../../../core/report/week-facts.ts";
import { useStores } from "../../store/stores.ts";

interface WorthRow {
  readonly name: string;
  readonly cost: number;
  readonly late: string;
  readonly without: number;
  readonly look: "bound" | "own" | "plain";
}

/** This plan beside the lower bound and what rules of thumb would have cost. */
export function Worth(props: { readonly plan: PlanDocument }): JSX.Element {
  const { format } = useStores();
  const rows = (): WorthRow[] => [
    ...(props.plan.bound.value > 0
      ? [
          {
            name: "No plan can cost less than",
            cost: props.plan.bound.value,
            late: "",
            without: 0,
            look: "bound" as const,
          },
        ]
      : []),
    {
      name: "This plan",
      cost: props.plan.cost.total,
      late: String(lateOrders(props.plan).length),
      without: unplannedCopies(props.plan),
      look: "own",
    },
    ...props.plan.handRules.map((rule) => ({
      name: capital(rule.name),
      cost: rule.cost,
      late: String(rule.lateOrders),
      without: rule.unplannedCopies,
      look: "plain" as const,
    })),
  ];
  const largest = (): number => Math.max(...rows().map(({ cost }) => cost), 1);
  const against = (row: WorthRow): string => {
    if (row.look === "own" || props.plan.cost.total <= 0) return "";
    const difference = row.cost - props.plan.cost.total;
    const sign = difference > 0 ? "+" : "";
    return `${sign}${format().amount(difference)} (${sign}${format().fixed((100 * difference) / props.plan.cost.total, 1)} %)`;
  };
  return (
    <div class="worth" tabindex="0" role="region" aria-label="This plan against rules of thumb">
      <h2 class="unseen">Against rules of thumb</h2>
      <table class="table">
        <caption class="unseen">This plan against the lower bound and rules of thumb</caption>
        <thead>
          <tr>
            <th scope="col">Plan</th>
            <th scope="col" class="num">
              {format().currency}
            </th>
            <th scope="col" class="num">
              Against this plan
            </th>
            <th scope="col" class="num">
              Late orders
            </th>
            <th scope="col" class="num">
              Copies without a place
            </th>
            <th scope="col">Beside each other</th>
          </tr>
        </thead>
        <tbody>
          <For each={rows()}>
            {(row) => (
              <tr>
                <th scope="row">
                  <bdi>{row.look === "own" ? <b>{row.name}</b> : row.name}</bdi>
                </th>
                <td class="num">{format().amount(row.cost)}</td>
                <td class="num">{against(row)}</td>
                <td class="num">{row.late}</td>
                <td class="num">{row.without > 0 ? format().number(row.without, 0) : ""}</td>
                <td class="cost-bar" aria-hidden="true">
                  <i style={{ width: `${(100 * row.cost) / largest()}%` }} data-look={row.look} />
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <p class="quiet">
        How the least was proven: <bdi>{props.plan.bound.from}</bdi>
      </p>
      <p class="quiet">Costs of plans that leave copies without a place are without these copies.</p>
    </div>
  );
}
