/**
 * Choosing a variant on the page, by style alone, so that it works without a script: each axis is a set of radio
 * buttons, each condition a class, and a rule hides the class where the buttons rule it out. Nothing is hidden until
 * the reader has chosen.
 */
import type { Axis, When } from '../document/types.ts';
import { Html, html } from './html.ts';

export class Conditions {
  private readonly axes: readonly Axis[];
  private readonly classes = new Map<string, { name: string; when: When }>();

  private readonly others = new Map<string, string[]>();

  constructor(axes: readonly Axis[]) {
    this.axes = axes;
  }

  /** The class of what is there only under this condition; `''` for what is always there. */
  classOf(when: When | undefined): string {
    if (!when || when.any.length === 0) return '';
    const key = JSON.stringify(when.any);
    const known = this.classes.get(key);
    if (known) return known.name;
    const name = `w${this.classes.size + 1}`;
    this.classes.set(key, { name, when });
    return name;
  }

  /** What is not made with classes and yet is there only under this condition. Must be a selector of its own. */
  also(selector: string, when: When | undefined): void {
    const name = this.classOf(when);
    if (name !== '') this.others.set(name, [...(this.others.get(name) ?? []), selector]);
  }

  /** For each class the names of the buttons that decide about it: until all are set, it is open. */
  decidedBy(): { [className: string]: string[] } {
    const names = ({ any }: When) =>
      [...new Set(any.flatMap((selection) => Object.keys(selection)))].flatMap((id) => {
        const at = this.axes.findIndex((axis) => axis.id === id);
        return at < 0 ? [] : [`axis-${at}`];
      });
    return Object.fromEntries([...this.classes.values()].map(({ name, when }) => [name, names(when)]));
  }

  /** The buttons of one axis. */
  buttons(axis: Axis, all: string): Html {
    const at = this.axes.indexOf(axis);
    const button = (id: string, label: string, checked: boolean) =>
      html`<label><input type="radio" name="axis-${at}" id="${id}"${checked && new Html(' checked')}><span>${label}</span></label>`;
    return html`<fieldset class="axis"><legend>${axis.label}</legend>${button(`axis-${at}`, all, true)}${axis.values.map(
      (value, index) => button(radio(at, index), value.label, false),
    )}</fieldset>`;
  }

  /** One rule for each class that was asked for. A selection is ruled out by any button that is not in it. */
  css(): string {
    return [...this.classes.values()]
      .map(({ name, when }) => {
        const against = when.any.map((selection) =>
          this.axes.flatMap((axis, at) => {
            const wanted = Object.hasOwn(selection, axis.id) ? selection[axis.id]! : undefined;
            if (!wanted) return [];
            return axis.values.flatMap((value, index) =>
              wanted.includes(value.id) ? [] : [`#${radio(at, index)}`],
            );
          }),
        );
        if (against.some((ids) => ids.length === 0)) return '';
        const hidden = [`.${name}`, ...(this.others.get(name) ?? [])];
        return `html${against.map((ids) => `:has(:is(${ids.join()}):checked)`).join('')} :is(${hidden.join()}){display:none!important}`;
      })
      .join('');
  }
}

function radio(axis: number, value: number): string {
  return `axis-${axis}-${value}`;
}
