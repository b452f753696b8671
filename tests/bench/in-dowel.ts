/** The content in Dowel: a machine and a procedure in one file. */
import type { Action, Content, Group, Part } from './content.ts';

export function inDowel({ axes, housings, parts, tasks }: Content): string {
  const lines = ['machine bench "Bench machine" {', ''];
  for (const axis of axes) lines.push(`  variant ${axis}: plain, extended`);
  lines.push('', '  part frame "frame" fixed', '');
  for (const housing of housings) lines.push(`  part ${housing} "${housing}" on frame fixed`);
  lines.push('');
  for (const part of parts) lines.push(...partLines(part), '');
  lines.push('}', '', 'procedure covers "Look at the covers"', '  for bench', '{');
  for (const task of tasks) {
    lines.push(`  task ${task.name} "${task.title}" {`);
    for (const group of task.groups) lines.push(...groupLines(group));
    lines.push('  }', '');
  }
  lines.push('}', '');
  return lines.join('\n');
}

function partLines(part: Part): string[] {
  const only = part.axis === undefined ? '' : `  only ${part.axis} is extended`;
  return [
    `  part ${part.id} "${part.title}" on ${part.housing}  held by ${part.bolts}${only}`,
    `  fastener ${part.bolts} "bolts of ${part.title}" x${part.count}`,
    `    clamps ${part.id} to ${part.housing}  thread ${part.thread}  class 8.8  torque ${part.torque} N·m${only}`,
  ];
}

function groupLines({ axis, actions }: Group): string[] {
  if (axis === undefined) return actions.map((action) => `    ${actionText(action)}`);
  return [
    `    when ${axis} is extended {`,
    ...actions.map((action) => `      ${actionText(action)}`),
    '    }',
  ];
}

function actionText(action: Action): string {
  const looked = action.for === undefined ? '' : ` for "${action.for}" expect "none"`;
  const text = action.text === undefined ? '' : ` "${action.text}"`;
  return `${action.verb} ${action.ref}${looked}${text}`;
}
