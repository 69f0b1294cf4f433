/** Tells those who wait that something happened, and counts how often. */
export class Bell {
  rings = 0;
  private waiting: (() => void)[] = [];

  ring(): void {
    this.rings += 1;
    const woken = this.waiting;
    this.waiting = [];
    for (const wake of woken) wake();
  }

  /** Resolves once it has rung more than `rings` times, or after `mostMs`. */
  async after(rings: number, mostMs: number): Promise<void> {
    if (this.rings > rings) return;
    await new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, mostMs);
      timer.unref();
      this.waiting.push(() => {
        clearTimeout(timer);
        resolve();
      });
    });
  }
}
