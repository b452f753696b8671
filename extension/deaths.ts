/** How often the server may die: up to four times in three minutes it is started again, then somebody must look. */
const MOST = 4;
/** ms */
const WITHIN = 3 * 60_000;

export class Deaths {
  private times: number[] = [];

  /** Counts one more death at `now` (ms); false where there were too many of late. */
  mayRestart(now: number): boolean {
    this.times = this.times.filter((time) => now - time < WITHIN);
    this.times.push(now);
    if (this.times.length <= MOST) return true;
    // Who starts it by hand begins to count anew.
    this.times = [];
    return false;
  }
}
