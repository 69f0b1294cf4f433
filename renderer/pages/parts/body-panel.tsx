import { type JSX, lazy, Show, Suspense } from "solid-js";
import { LENGTH_UNITS, lengthUnit } from "../../../core/geometry/length-unit.ts";
import type { Finding } from "../../../core/shop/finding.ts";
import type { Part } from "../../../core/shop/part.ts";
import { Button } from "../../components/button.tsx";
import { EntryFields, FieldGroup } from "../../components/entry/entry-fields.tsx";
import { KeyValues } from "../../components/key-values.tsx";
import { Select } from "../../components/select.tsx";
import { remeasure, replaceBody } from "../../store/body-files.ts";
import { chooseFile } from "../../store/download.ts";
import { useStores } from "../../store/stores.ts";
import { DirectionList } from "./direction-list.tsx";
import type { PartColumns } from "./part-columns.ts";
import type { PutPart } from "./part-panel.tsx";
import type { ChosenWay } from "./ways-table.tsx";

/** Drawing in three dimensions is large: it comes with the first body that is looked at. */
const BodyView = lazy(() => import("./body-view.tsx"));

interface BodyPanelProps {
  readonly part: Part;
  readonly chosen: ChosenWay | null;
  readonly columns: PartColumns;
  readonly onPut: PutPart;
  readonly findingAt: (field: string) => Finding | undefined;
}

/** The body of a part: seen on the platform of the chosen machine, its measures, its file and the file's unit. */
export function BodyPanel(props: BodyPanelProps): JSX.Element {
  const stores = useStores();
  const { format } = stores;
  const mesh = () => (props.part.geometry.kind === "mesh" ? props.part.geometry : null);
  const measures = () => props.part.geometry.measures;
  const choose = async (): Promise<void> => {
    const file = await chooseFile(".stl,.3mf");
    if (file) await replaceBody(props.part, file, stores);
  };
  const lengthText = (valueMm: number): string => format().lengthText(valueMm);
  return (
    <>
      <FieldGroup
        title="The body"
        tools={<Button onClick={() => void choose()}>{mesh() ? "Take another file" : "Take a file"}</Button>}
      >
        <Suspense fallback={<p class="quiet">The view is fetched.</p>}>
          <BodyView part={props.part} chosen={props.chosen} />
        </Suspense>
      </FieldGroup>
      <FieldGroup title={mesh() ? "Measured on its file" : "Measures given by hand"}>
        <Show
          when={mesh()}
          fallback={
            <EntryFields
              row={props.part}
              rowKey={props.part.id}
              columns={props.columns.measures}
              findingAt={props.findingAt}
              onPut={(next, column) => props.onPut(next, `${column.title.toLowerCase()} of ${next.id}`)}
            />
          }
        >
          {(geometry) => (
            <>
              <KeyValues
                pairs={[
                  { name: "File", value: <bdi>{geometry().file}</bdi> },
                  {
                    name: "Box",
                    value: `${lengthText(measures().boxMm.x)} × ${lengthText(measures().boxMm.y)} × ${lengthText(measures().boxMm.z)}`,
                  },
                  { name: "Volume", value: format().volumeText(measures().volumeMm3) },
                  { name: "Surface", value: format().areaText(measures().areaMm2) },
                  { name: "Overhang, z up", value: format().areaText(measures().overhangAreaMm2 ?? 0) },
                ]}
              />
              <Select
                label="The file is in"
                choices={LENGTH_UNITS.map((unit) => ({ value: unit, label: unit }))}
                value={geometry().unit}
                onChange={(value) => {
                  const unit = lengthUnit(value);
                  const what = `unit of the body of ${props.part.id}`;
                  if (unit) void remeasure(props.part, { unit }, what, stores);
                }}
              />
            </>
          )}
        </Show>
      </FieldGroup>
      <Show when={mesh()}>
        <DirectionList part={props.part} />
      </Show>
    </>
  );
}
