/** What one part of a procedure wrote: before and after, small, to take it back and to do it again. */
import type { Recorder, Tracked } from './recorder.ts';
import type { Saved, State } from './state.ts';

interface Written {
  readonly map: Tracked<unknown, unknown>;
  readonly key: unknown;
  readonly before: unknown;
  readonly after: unknown;
}

const NO_CELLS: readonly Written[] = [];
const NO_ENTRIES: readonly Saved[] = [];

export class Journal {
  readonly cells: readonly Written[];
  /** For each variable three numbers: itself, before, after; below 0 are places in `split`. */
  private readonly numbers: Int32Array;
  private readonly split: readonly Saved[];

  /** To be made when the part is done. */
  constructor(recorder: Recorder, state: State) {
    const { variables } = recorder;
    const numbers = new Int32Array(variables.size * 3);
    const split: Saved[] = [];
    const put = (place: number, saved: Saved) => {
      numbers[place] = typeof saved === 'number' ? saved : -split.push(saved);
    };
    let place = 0;
    for (const [variable, before] of variables) {
      numbers[place] = variable;
      put(place + 1, before as Saved);
      put(place + 2, state.saved(variable));
      place += 3;
    }
    this.numbers = numbers;
    this.split = split.length > 0 ? split : NO_ENTRIES;
    this.cells =
      recorder.cells.length > 0
        ? recorder.cells.map((cell) => ({ ...cell, after: cell.map.get(cell.key) }))
        : NO_CELLS;
  }

  undo(state: State): void {
    const { numbers } = this;
    for (let place = 0; place < numbers.length; place += 3)
      state.restore(numbers[place]!, this.saved(place + 1));
    for (const { map, key, before } of this.cells) map.restore(key, before);
  }

  redo(state: State): void {
    const { numbers } = this;
    for (let place = 0; place < numbers.length; place += 3)
      state.restore(numbers[place]!, this.saved(place + 2));
    for (const { map, key, after } of this.cells) map.restore(key, after);
  }

  each(call: (variable: number, before: Saved, after: Saved) => void): void {
    const { numbers } = this;
    for (let place = 0; place < numbers.length; place += 3)
      call(numbers[place]!, this.saved(place + 1), this.saved(place + 2));
  }

  private saved(place: number): Saved {
    const number = this.numbers[place]!;
    return number < 0 ? this.split[-number - 1]! : number;
  }
}
