/**
 * The tightening order as a drawing: in each ring the number in the order of work, beside it the number of the
 * position; the ring to begin with is filled. One colour, 360 px wide unless asked otherwise.
 */
import { layOutOrder, type OrderPicture } from './order-layout.ts';
import {
  ACCENT,
  type Drawing,
  element,
  escapeText,
  label,
  PAPER,
  SIZE,
  SMALL,
  svgOf,
  type TextAlternative,
  wrapped,
} from './svg.ts';

export interface OrderOptions {
  /** Put before every id; must be unique on the page. */
  readonly prefix: string;
  /** How wide, px; 360 when absent. */
  readonly width?: number;
  /** Id of the step it belongs to, for pages that make it clickable. */
  readonly step?: string;
  /** What stands under it comes as text of its own, so that it stays readable where the drawing is made smaller. */
  readonly captionApart?: boolean;
}

const LINE = 17;

/** Undefined where nothing is to be drawn: fewer than two places, or no order. */
export function orderDrawing(picture: OrderPicture, options: OrderOptions): Drawing | undefined {
  if (picture.places.length < 2 || picture.sequence.length === 0) return undefined;
  const { prefix, step, width = 360 } = options;
  const laid = layOutOrder(picture, width);
  const lines = (options.captionApart ? [] : captionOf(picture)).flatMap((text) =>
    wrapped(text, laid.width - 16, SIZE),
  );
  const height = laid.height + (lines.length > 0 ? 10 + lines.length * LINE : 0);
  const title = `Order of work on the ${picture.name}`;
  const alternative = alternativeOf(picture, title);
  const holes = laid.holes.map((hole) => {
    const isFirst = hole.order === 1;
    return element(
      'g',
      {
        id: `${prefix}-p-${hole.position}`,
        'data-thing': picture.thing,
        'data-position': hole.position,
        'data-order': hole.order,
        'data-step': step,
      },
      element('circle', {
        cx: hole.x,
        cy: hole.y,
        r: laid.radius,
        fill: isFirst ? ACCENT : PAPER,
        stroke: isFirst ? ACCENT : 'currentColor',
        'stroke-width': isFirst ? 2.5 : 1.5,
        'stroke-dasharray': hole.order === undefined ? '2 3' : undefined,
      }),
      hole.order === undefined
        ? ''
        : element(
            'text',
            {
              x: hole.x,
              y: hole.y + NUMBER_SIZE * 0.35,
              'text-anchor': 'middle',
              'font-size': NUMBER_SIZE,
              'font-weight': 700,
              fill: isFirst ? PAPER : 'currentColor',
            },
            String(hole.order),
          ),
      label(`#${hole.position}`, hole.label.x, hole.label.y + SMALL * 0.35, {
        'text-anchor': 'middle',
        'font-size': SMALL,
      }),
    );
  });
  const caption = lines.map((text, index) =>
    element('text', { x: 8, y: laid.height + 14 + index * LINE }, escapeText(text)),
  );
  return {
    svg: svgOf(
      { width: laid.width, height, title, description: descriptionOf(picture), prefix, kind: 'order' },
      ...holes,
      ...caption,
    ),
    width: laid.width,
    height,
    title,
    alternative,
    ...(options.captionApart ? { caption: captionBesideStages(picture) } : {}),
  };
}

const NUMBER_SIZE = 14;

/** `1-5-3-7`: every position in the order of work. */
export function sequenceText(picture: OrderPicture): string {
  return picture.sequence.map((position) => `#${position}`).join(', ');
}

/** What stands under the drawing. */
function captionOf(picture: OrderPicture): string[] {
  const { passes } = picture;
  return [
    'In the rings: the order of work, from the filled ring on. Beside them: the number of the position.',
    whereIsOne(picture),
    ...(passes.length > 1
      ? passes.map((pass, index) => `Pass ${index + 1} of ${passes.length}, in this order: ${pass}`)
      : passes.map((pass) => `In this order: ${pass}`)),
  ];
}

/** On a page the stages stand above it already. */
function captionBesideStages(picture: OrderPicture): string[] {
  const [rings, one] = captionOf(picture);
  return [rings!, one!, ...(picture.passes.length > 1 ? ['Every stage in this order.'] : [])];
}

/** Where #1 lies. An even circle and rows with an order by name look the same from every place #1 may be. */
export function whereIsOne({ layout, first, listed, places }: OrderPicture): string {
  const one = `#${places[0]?.position ?? 1}`;
  if (first) return `${one}: ${first}.`.replace(/\.\.$/, '.');
  if (layout === 'circle') return `${one} may be any of them; count on clockwise from it.`;
  if (layout === 'rows')
    return listed
      ? `Where ${one} lies on the machine is not given: look for its mark before you begin.`
      : `${one} may be any corner; count along the row from it, then along the next row from the same side.`;
  return 'The places are drawn as the machine file gives them.';
}

function descriptionOf(picture: OrderPicture): string {
  return `${picture.places.length} positions ${SHAPE[picture.layout]}. Order: ${sequenceText(picture)}. ${whereIsOne(picture)}`;
}

const SHAPE = { circle: 'on a circle', rows: 'in rows', places: 'at given places' } as const;

function alternativeOf(picture: OrderPicture, caption: string): TextAlternative {
  return {
    kind: 'table',
    caption,
    head: ['Order', 'Position'],
    rows: picture.sequence.map((position, index) => [String(index + 1), `#${position}`]),
  };
}
