/**
 * Content models of the DITA elements that are written, as regular expressions over the names of children, each
 * followed by a blank. Source: OASIS DITA 1.3 (task and machinery task modules, as read in the committee's
 * repository): task, taskbody, step, substep, prelreqs, closereqs, the "none" forms, reqpers, hazardstatement and
 * messagepanel. From memory: blocks and lists, the map, the prolog, names inside the lists of prelreqs.
 */
import type { Element } from '../drawings/demos.ts';

const BLOCKS = '(p|ol|ul|note|hazardstatement)';
const STEP_BODY = '(choices|choicetable|info|itemgroup|stepxmp|substeps|tutorialinfo)';

/** Children in order; `text` where the element may hold text. */
const MODELS: Readonly<
  Record<string, { children: string; text?: true; attributes?: Record<string, RegExp> }>
> = {
  task: {
    children: '(title )(titlealts )?(shortdesc |abstract )?(prolog )?(taskbody )?(related-links )?',
    attributes: { id: /^[\p{L}_][\p{L}\p{N}._-]*$/u },
  },
  title: { children: '', text: true },
  shortdesc: { children: '', text: true },
  prolog: { children: '(critdates )?(metadata )?' },
  critdates: { children: '(created )?' },
  created: { children: '', attributes: { date: /\d/ } },
  metadata: { children: '(othermeta )+' },
  othermeta: { children: '', attributes: { name: /./, content: /./ } },
  taskbody: {
    children:
      '((prelreqs|context|section) )*((steps|steps-unordered|steps-informal) )?(result )?(tasktroubleshooting )?(example )*(closereqs )?',
  },
  context: { children: `(${BLOCKS} )*`, text: true },
  section: { children: `(title )?(${BLOCKS} )*`, text: true },
  steps: { children: '(step )+' },
  step: {
    children: `((note|hazardstatement) )*(cmd )(${STEP_BODY} )*(stepresult )?(steptroubleshooting )?`,
  },
  substeps: { children: '(substep )+' },
  substep: {
    children: '((note|hazardstatement) )*(cmd )((info|itemgroup|stepxmp) )*(stepresult )?',
  },
  cmd: { children: '', text: true },
  info: { children: `(${BLOCKS} )*`, text: true },
  stepresult: { children: `(${BLOCKS} )*`, text: true },
  choices: { children: '(choice )+' },
  choice: { children: `(${BLOCKS} )*`, text: true },
  choicetable: { children: '(chhead )?(chrow )+' },
  chrow: { children: '(choption )(chdesc )' },
  choption: { children: `(${BLOCKS} )*`, text: true },
  chdesc: { children: `(${BLOCKS} )*`, text: true },
  ol: { children: '(li )+' },
  ul: { children: '(li )+' },
  li: { children: `(${BLOCKS} )*`, text: true },
  p: { children: '', text: true },
  note: { children: '', text: true, attributes: { type: /^(note|caution|danger|notice|warning)$/ } },
  hazardstatement: {
    children: '(messagepanel )+',
    attributes: { type: /^(caution|danger|notice|warning)$/ },
  },
  messagepanel: { children: '(typeofhazard )(consequence )*(howtoavoid )(consequence |howtoavoid )*' },
  typeofhazard: { children: '', text: true },
  consequence: { children: '', text: true },
  howtoavoid: { children: '', text: true },
  prelreqs: {
    children: '(reqconds )?(reqpers )?(supequip )?(supplies )?(spares )?(safety )?',
  },
  closereqs: { children: '(reqconds )' },
  reqconds: { children: '(noconds |(reqcond )+)' },
  reqpers: { children: '((personnel )((perscat )?(perskill )?(esttime )?)?)+' },
  supequip: { children: '(nosupeq |(supeqli )+)' },
  supplies: { children: '(nosupply |(supplyli )+)' },
  spares: { children: '(nospares |(sparesli )+)' },
  safety: { children: '(nosafety |(safecond )+)' },
  supeqli: { children: '(supequi )+' },
  supplyli: { children: '(supply )+' },
  sparesli: { children: '(spare )+' },
  ...Object.fromEntries(
    ['reqcond', 'personnel', 'perskill', 'esttime', 'supequi', 'supply', 'spare', 'safecond'].map((name) => [
      name,
      { children: '', text: true as const },
    ]),
  ),
  ...Object.fromEntries(
    ['noconds', 'nosupeq', 'nosupply', 'nospares', 'nosafety'].map((name) => [name, { children: '' }]),
  ),
  map: { children: '(title )?(topicref )*' },
  topicref: { children: '(topicref )*', attributes: { href: /^[^/\\]+\.dita$/ } },
};

/** What breaks a content model, anywhere in the tree. */
export function faultsIn(element: Element, path = ''): string[] {
  const name = element['#name'];
  const here = `${path}/${name}`;
  const model = MODELS[name];
  if (!model) return [`${here} is not known`];
  const children = (element.$$ ?? []).filter((one) => one['#name'] !== '__text__');
  const names = children.map((one) => `${one['#name']} `).join('');
  const faults: string[] = [];
  if (!new RegExp(`^(${model.children})$`).test(names)) faults.push(`${here} holds ${names}`);
  if (!model.text && (element._ ?? '').trim() !== '') faults.push(`${here} holds text`);
  for (const [key, allowed] of Object.entries(model.attributes ?? {}))
    if (!allowed.test(element.$?.[key] ?? '')) faults.push(`${here} @${key}="${element.$?.[key]}"`);
  return [...faults, ...children.flatMap((one) => faultsIn(one, here))];
}
