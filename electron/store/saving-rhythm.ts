const QUIET_MS = 1500;
const LONGEST_MS = 10_000;
const AGAIN_MS = 10_000;

/** When to save by itself: once nothing was edited for 1.5 s, at the latest 10 s after the first unsaved edit. */
export class SavingRhythm {
  private readonly save: () => void;
  private timer: NodeJS.Timeout | null = null;
  private firstMs: number | null = null;
  private isPaused = false;

  constructor(save: () => void) {
    this.save = save;
  }

  edited(): void {
    if (this.isPaused) return;
    const nowMs = performance.now();
    this.firstMs ??= nowMs;
    this.after(Math.max(0, Math.min(QUIET_MS, this.firstMs + LONGEST_MS - nowMs)));
  }

  saved(): void {
    this.isPaused = false;
    this.stop();
  }

  /** The file is not as it was left: saving waits until somebody has decided. */
  pause(): void {
    this.isPaused = true;
    this.stop();
  }

  /** The disk said no: it is asked again later. */
  failed(): void {
    this.after(AGAIN_MS);
  }

  stop(): void {
    if (this.timer) clearTimeout(this.timer);
    this.timer = null;
    this.firstMs = null;
  }

  private after(ms: number): void {
    if (this.timer) clearTimeout(this.timer);
    this.timer = setTimeout(this.save, ms);
    this.timer.unref();
  }
}
