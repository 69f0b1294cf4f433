import { mkdir, readFile, rename } from "node:fs/promises";
import { dirname } from "node:path";
import { z } from "zod";
import { DEFAULT_PREFERENCES, type Preferences, preferencesSchema } from "../contract/preferences.ts";
import { writeAtomically } from "./atomic-write.ts";

const recentFile = z.strictObject({ path: z.string(), shopName: z.string(), openedAt: z.string() });

const settingsSchema = z.strictObject({
  preferences: preferencesSchema,
  recent: z.array(recentFile),
});

export type RecentFile = z.infer<typeof recentFile>;
type SettingsFile = z.infer<typeof settingsSchema>;

const MOST_RECENT = 12;

/** What this person likes and opened lately: one small file of the program's own. */
export class SettingsStore {
  private readonly path: string;
  private writes: Promise<unknown> = Promise.resolve();

  constructor(path: string) {
    this.path = path;
  }

  async preferences(): Promise<Preferences> {
    return (await this.read()).preferences;
  }

  /** Newest first. */
  async recent(): Promise<readonly RecentFile[]> {
    return (await this.read()).recent;
  }

  async keepPreferences(preferences: Preferences): Promise<void> {
    await this.write((settings) => ({ ...settings, preferences }));
  }

  async opened(file: RecentFile): Promise<void> {
    await this.write((settings) => {
      const others = settings.recent.filter(({ path }) => path !== file.path);
      return { ...settings, recent: [file, ...others].slice(0, MOST_RECENT) };
    });
  }

  /**
   * Read each time, since another process may have written it. A file that cannot be read is put aside: nobody should be kept
   * out by a broken preference.
   */
  private async read(): Promise<SettingsFile> {
    const text = await readFile(this.path, "utf8").catch(() => null);
    const settings = text === null ? null : settingsOf(text);
    if (text !== null && !settings) {
      await rename(this.path, `${this.path}.unreadable`).catch(() => undefined);
    }
    return settings ?? { preferences: DEFAULT_PREFERENCES, recent: [] };
  }

  private write(edit: (settings: SettingsFile) => SettingsFile): Promise<void> {
    const written = this.writes.then(async () => {
      const next = edit(await this.read());
      await mkdir(dirname(this.path), { recursive: true });
      await writeAtomically(this.path, `${JSON.stringify(next, null, 2)}\n`);
    });
    this.writes = written.catch(() => undefined);
    return written;
  }
}

function settingsOf(text: string): SettingsFile | null {
  try {
    return settingsSchema.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}
