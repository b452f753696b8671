// The VS Code server and its web client look for their modules in lib/vscode/node_modules.
import { rmSync, symlinkSync } from 'node:fs';

const p = new URL('./node_modules/code-server/lib/vscode/node_modules', import.meta.url).pathname;
rmSync(p, { recursive: true, force: true });
symlinkSync('../../..', p);
