/**
 * The map of a machine on its page: in parts that a telephone and a sheet of paper bear, and all of it in words once,
 * behind a fold on the screen and open on paper.
 */
import type { Model } from '../../model/model.ts';
import { machineMap } from '../drawings/map.ts';
import { mapGraph, sentencesOf } from '../drawings/map-graph.ts';
import { layOutMap } from '../drawings/map-layout.ts';
import { partsOf } from '../drawings/map-parts.ts';
import { Html, html } from '../page/html.ts';
import type { PageWords } from '../words/page-words.ts';

/** px: what is no wider is shown whole at 360 px, hardly smaller, and two stand side by side on paper. */
const WIDEST = 420;

/** Undefined where nothing belongs to anything. */
export function machineMapOf(model: Model, words: PageWords): Html | undefined {
  const graph = mapGraph(model);
  if (graph.nodes.length === 0) return undefined;
  const parts = partsOf(graph, (one) => layOutMap(one, 'narrow').width <= WIDEST);
  const figures = parts.map(({ about, piece, graph: part }, at) => {
    const listed = about.join(', ');
    const caption = piece === undefined ? listed : words.piece(listed, piece);
    const name = caption === '' ? model.title : `${model.title}, ${caption}`;
    const { svg } = machineMap(part, { prefix: `map-${at}`, name, size: 'narrow' });
    return html`<figure class="drawn">${new Html(svg)}${caption !== '' && html`<figcaption>${caption}</figcaption>`}</figure>`;
  });
  return html`<div class="maps">${figures}</div><details class="map-words"><summary>${words.inWords}</summary><ul>${sentencesOf(
    graph,
  ).map((one) => html`<li>${one}</li>`)}</ul></details>`;
}
