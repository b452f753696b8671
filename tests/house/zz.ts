import { checkSync } from 'recheck';
import ts from 'typescript';
import { readSource, sourceFiles } from './imports.ts';
const seen=new Set<string>();
for (const file of sourceFiles('.', ['grammar','language-server','extension'])) {
  const visit=(node: ts.Node): void => { if (ts.isRegularExpressionLiteral(node)) {
    const end=node.text.lastIndexOf('/'); const src=node.text.slice(1,end), fl=node.text.slice(end+1);
    if(!seen.has(node.text)){ seen.add(node.text);
    const r=checkSync(src, fl, {timeout:3000});
    if(r.status==='vulnerable'){ const re=new RegExp(src,fl.replace('y','')); const s=r.attack; let ms=0; let pump=''; 
      try { pump=s.pumps.map(p=>JSON.stringify([p.prefix.slice(0,20),p.pump.slice(0,20)])).join()+JSON.stringify(s.suffix.slice(0,20));
      const build=(n:number)=>s.pumps.map(p=>p.prefix+p.pump.repeat(Math.ceil(n/Math.max(1,p.pump.length)/s.pumps.length))).join('')+s.suffix;
      const str=build(20000).slice(0,20100); const t=performance.now(); re.lastIndex=0; re.test(str); ms=performance.now()-t; } catch(e) {pump=String(e)}
      console.log(r.complexity.type, ms.toFixed(0)+'ms', file, node.text.slice(0,110), pump.slice(0,150)); }
    else if (r.status==='unknown') console.log('unknown', file, node.text.slice(0,100)); } }
    ts.forEachChild(node, visit); };
  visit(ts.createSourceFile(file, readSource('.',file), ts.ScriptTarget.Latest, true));
}
