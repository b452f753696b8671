/**
 * How large a drawing is shown: larger, smaller, or the whole of it at once. By the buttons above it, or by the keys
 * named on them. It stays so while the text changes.
 */
const STEP = 1.25;
const LEAST = 0.1;
const MOST = 4;

export class Zoom {
  private factor = 1;
  private readonly bar: HTMLElement;
  private readonly shown: HTMLElement;

  constructor(bar: HTMLElement, shown: HTMLElement) {
    this.bar = bar;
    this.shown = shown;
    bar.addEventListener('click', ({ target }) => {
      const button = (target as Element).closest('button');
      if (button) this.press(button.value);
    });
    document.addEventListener('keydown', ({ key, ctrlKey, metaKey, altKey }) => {
      if (!ctrlKey && !metaKey && !altKey) this.press(key === '=' ? '+' : key);
    });
  }

  /** Once a drawing has come or gone. */
  apply(): void {
    const { drawing } = this;
    this.bar.hidden = !drawing;
    if (!drawing) return;
    drawing.style.width = this.factor === 1 ? '' : `${widthOf(drawing) * this.factor}px`;
    drawing.style.height = this.factor === 1 ? '' : 'auto';
  }

  private get drawing(): SVGSVGElement | undefined {
    return this.shown.querySelector<SVGSVGElement>('svg.dowel-drawing') ?? undefined;
  }

  private press(key: string): void {
    const { drawing } = this;
    if (!drawing) return;
    if (key === '+') this.factor *= STEP;
    else if (key === '-') this.factor /= STEP;
    else if (key === '1') this.factor = 1;
    else if (key === '0') this.factor = this.whole(drawing);
    else return;
    this.factor = Math.min(MOST, Math.max(LEAST, this.factor));
    this.apply();
    this.shown.querySelector('.dowel-here')?.scrollIntoView({ block: 'nearest', inline: 'center' });
  }

  /** So that all of it is seen; never larger than it was drawn. */
  private whole(drawing: SVGSVGElement): number {
    const wide = drawing.parentElement!.clientWidth / widthOf(drawing);
    const room = window.innerHeight - (drawing.getBoundingClientRect().top + window.scrollY);
    const high = room / Number(drawing.getAttribute('height'));
    return Math.min(1, wide, Math.max(high, LEAST));
  }
}

function widthOf(drawing: SVGSVGElement): number {
  return Number(drawing.getAttribute('width'));
}
