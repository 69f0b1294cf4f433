import * as boxes from "./boxes.ts";
import * as brackets from "./brackets.ts";
import * as channels from "./channels.ts";
import { ductElbow } from "./duct-elbow.ts";
import type { Solid } from "./kit.ts";
import * as plates from "./plates.ts";
import * as rings from "./rings.ts";
import * as sleeves from "./sleeves.ts";
import * as tapers from "./tapers.ts";
import { threeMfBytes } from "./write-3mf.ts";
import { stlBytes } from "./write-stl.ts";

/** One mesh file of the demo shop. */
export interface BodyFile {
  readonly file: string;
  readonly bytes: () => Uint8Array;
}

/** Parts whose file is a binary STL in mm. */
const STL: Readonly<Record<string, () => Solid>> = {
  clip: channels.clip,
  "cable-guide": channels.cableGuide,
  nameplate: brackets.nameplate,
  spacer: rings.spacer,
  gauge: plates.gauge,
  "drill-template": plates.drillTemplate,
  stencil: plates.stencil,
  handle: channels.handle,
  "lens-hood": rings.lensHood,
  "seal-form": rings.sealForm,
  "bumper-foot": rings.bumperFoot,
  grommet: rings.grommet,
  "sensor-bracket": brackets.sensorBracket,
  "terminal-cover": boxes.terminalCover,
  "relay-housing": boxes.relayHousing,
  "busbar-guard": channels.busbarGuard,
  "duct-elbow": ductElbow,
  "fan-shroud": sleeves.fanShroud,
  "lamp-socket": rings.lampSocket,
  "gripper-finger": channels.gripperFinger,
  manifold: plates.suctionManifold,
  "small-bin": boxes.smallBin,
  "clip-tray": boxes.clipTray,
  "display-form": tapers.displayForm,
  "storage-bin": sleeves.storageBin,
  "machine-cover": tapers.machineCover,
  "signage-letter": sleeves.signageLetter,
  planter: tapers.planter,
  "long-planter": sleeves.longPlanter,
  "chair-shell": sleeves.chairShell,
  "lamp-column": rings.lampColumn,
  "duct-transition": tapers.ductTransition,
  "bollard-cap": rings.bollardCap,
  "foundry-pattern": sleeves.foundryPattern,
  "trim-jig": sleeves.trimJig,
  "tank-mould": tapers.tankMould,
  "boat-mould-half": tapers.boatMouldHalf,
};

/** Turned by half about z, so that the second saddle stands beside the first. */
const BESIDE = "-1 0 0 0 -1 0 0 0 1 0 0 0";

/** Every mesh file of the demo shop; three are 3MF, one of them in inches, one built twice. */
export const BODIES: readonly BodyFile[] = [
  ...Object.entries(STL).map(([id, make]) => ({ file: `${id}.stl`, bytes: () => stlBytes(make()) })),
  {
    file: "impeller-blank.3mf",
    bytes: () => threeMfBytes({ solid: rings.impellerBlank(), unit: "millimeter" }),
  },
  { file: "fixture-plate.3mf", bytes: () => threeMfBytes({ solid: plates.fixturePlate(), unit: "inch" }) },
  {
    file: "pipe-saddle.3mf",
    bytes: () => threeMfBytes({ solid: channels.pipeSaddle(), unit: "millimeter", secondTransform: BESIDE }),
  },
];
