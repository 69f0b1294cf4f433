import { countText } from "./display.ts";
import { type Html, html, when } from "./html-escape.ts";
import { idText, section, type SheetContext, tableHead } from "./sheet-parts.ts";
import { type PlanTask, tasksByDay } from "./week-facts.ts";
import { TASK_WORDS } from "./words.ts";

/** Operators' tasks in time order, a table per day, with boxes to tick on paper. */
export function tasksSection(context: SheetContext): Html {
  const days = tasksByDay(context.plan, context.display.date);
  const tables = days.map(({ date, tasks }) => dayTable(date, tasks, context));
  return section(
    "tasks",
    "Operators' tasks",
    "In time order, day by day. Boxes are for ticking on paper.",
    html`<nav aria-label="Days"><ul>${days.map(({ date }) => html`<li><a href="#day-${date}">${context.display.day(date)}</a></li>`)}</ul></nav><div class="days-grid">${tables}</div>`,
  );
}

function dayTable(date: string, tasks: readonly PlanTask[], context: SheetContext): Html {
  const rows = tasks.map((task) => taskRow(task, context));
  return html`<table class="tasks" id="day-${date}"><caption><b>${context.display.day(date)}</b> ${countText(tasks.length, "task")}</caption>
${tableHead(["Time", "Done", "Work", "Machine", "What to do"])}
<tbody>${rows}</tbody></table>
`;
}

function taskRow(task: PlanTask, { display }: SheetContext): Html {
  const others = task.alsoFor?.length ?? 0;
  const machine =
    task.machineId === null ? html`<span class="none" aria-label="none">–</span>` : idText(task.machineId);
  return html`<tr class="task-${task.kind}"><th scope="row"><span>${display.clock(display.minute(task.at))}</span></th><td><span class="tick" role="img" aria-label="box to tick"></span></td><td class="time">${TASK_WORDS[task.kind]}</td><td>${machine}</td><td class="what"><bdi>${task.text}</bdi> <span class="build-ref">${idText(task.buildId)}${when(others > 0, () => html` and ${others} more`)}</span></td></tr>
`;
}
