/**
 * The content in XML; an XML Schema whose keys know the names; and Schematron rules for the one thing that
 * a schema cannot say and that matters most here: what comes off goes back.
 */
import type { Action, Content, Group } from './content.ts';

export function inXml({ axes, housings, parts, tasks }: Content): string {
  const lines = ['<?xml version="1.0" encoding="UTF-8"?>', '<job>', '  <machine>'];
  for (const axis of axes) lines.push(`    <axis id="${axis}"/>`);
  for (const housing of housings) lines.push(`    <housing id="${housing}"/>`);
  for (const part of parts) {
    const axis = part.axis === undefined ? '' : ` axis="${part.axis}"`;
    lines.push(
      `    <part id="${part.id}" on="${part.housing}" title="${part.title}" heldBy="${part.bolts}"${axis}/>`,
      `    <fastener id="${part.bolts}" count="${part.count}" thread="${part.thread}" torque="${part.torque}"/>`,
    );
  }
  lines.push('  </machine>', '  <procedure>');
  for (const task of tasks) {
    lines.push(`    <task id="${task.name}" title="${task.title}">`);
    for (const group of task.groups) lines.push(...groupLines(group));
    lines.push('    </task>');
  }
  lines.push('  </procedure>', '</job>', '');
  return lines.join('\n');
}

function groupLines({ axis, actions }: Group): string[] {
  const condition = axis === undefined ? '' : ` axis="${axis}"`;
  return [
    `      <group${condition}>`,
    ...actions.map((action) => `        ${actionText(action)}`),
    '      </group>',
  ];
}

function actionText(action: Action): string {
  const looked = action.for === undefined ? '' : ` for="${action.for}"`;
  const open = `<${action.verb} ref="${action.ref}"${looked}`;
  return action.text === undefined ? `${open}/>` : `${open}>${action.text}</${action.verb}>`;
}

const VERBS = ['remove', 'inspect', 'clean', 'refit'];

export const XML_SCHEMA = `<?xml version="1.0" encoding="UTF-8"?>
<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema">
  <xs:simpleType name="name">
    <xs:restriction base="xs:string"><xs:pattern value="[a-z][a-z0-9\\-]*"/></xs:restriction>
  </xs:simpleType>
  <xs:complexType name="action" mixed="true">
    <xs:attribute name="ref" type="name" use="required"/>
    <xs:attribute name="for" type="xs:string"/>
  </xs:complexType>
  <xs:element name="job">
    <xs:complexType>
      <xs:sequence>
        <xs:element name="machine">
          <xs:complexType>
            <xs:choice maxOccurs="unbounded">
              <xs:element name="axis">
                <xs:complexType><xs:attribute name="id" type="name" use="required"/></xs:complexType>
              </xs:element>
              <xs:element name="housing">
                <xs:complexType><xs:attribute name="id" type="name" use="required"/></xs:complexType>
              </xs:element>
              <xs:element name="part">
                <xs:complexType>
                  <xs:attribute name="id" type="name" use="required"/>
                  <xs:attribute name="title" type="xs:string" use="required"/>
                  <xs:attribute name="on" type="name" use="required"/>
                  <xs:attribute name="heldBy" type="name" use="required"/>
                  <xs:attribute name="axis" type="name"/>
                </xs:complexType>
              </xs:element>
              <xs:element name="fastener">
                <xs:complexType>
                  <xs:attribute name="id" type="name" use="required"/>
                  <xs:attribute name="count" type="xs:positiveInteger" use="required"/>
                  <xs:attribute name="thread" type="xs:string" use="required"/>
                  <xs:attribute name="torque" type="xs:decimal" use="required"/>
                </xs:complexType>
              </xs:element>
            </xs:choice>
          </xs:complexType>
        </xs:element>
        <xs:element name="procedure">
          <xs:complexType>
            <xs:sequence>
              <xs:element name="task" maxOccurs="unbounded">
                <xs:complexType>
                  <xs:sequence>
                    <xs:element name="group" maxOccurs="unbounded">
                      <xs:complexType>
                        <xs:choice maxOccurs="unbounded">
${VERBS.map((verb) => `                          <xs:element name="${verb}" type="action"/>`).join('\n')}
                        </xs:choice>
                        <xs:attribute name="axis" type="name"/>
                      </xs:complexType>
                    </xs:element>
                  </xs:sequence>
                  <xs:attribute name="id" type="name" use="required"/>
                  <xs:attribute name="title" type="xs:string" use="required"/>
                </xs:complexType>
              </xs:element>
            </xs:sequence>
          </xs:complexType>
        </xs:element>
      </xs:sequence>
    </xs:complexType>
    <xs:key name="things"><xs:selector xpath="machine/housing | machine/part | machine/fastener"/><xs:field xpath="@id"/></xs:key>
    <xs:key name="axes"><xs:selector xpath="machine/axis"/><xs:field xpath="@id"/></xs:key>
    <xs:keyref name="acted-on" refer="things">
      <xs:selector xpath="${VERBS.map((verb) => `procedure/task/group/${verb}`).join(' | ')}"/>
      <xs:field xpath="@ref"/>
    </xs:keyref>
    <xs:keyref name="seated" refer="things">
      <xs:selector xpath="machine/part"/><xs:field xpath="@on"/>
    </xs:keyref>
    <xs:keyref name="held" refer="things">
      <xs:selector xpath="machine/part"/><xs:field xpath="@heldBy"/>
    </xs:keyref>
    <xs:keyref name="condition" refer="axes">
      <xs:selector xpath="machine/part | procedure/task/group"/><xs:field xpath="@axis"/>
    </xs:keyref>
  </xs:element>
</xs:schema>
`;

export const SCHEMATRON = `<?xml version="1.0" encoding="UTF-8"?>
<schema xmlns="http://purl.oclc.org/dsdl/schematron">
  <pattern name="order">
    <rule context="remove">
      <assert test="@ref = following::refit/@ref">what comes off goes back</assert>
    </rule>
    <rule context="refit">
      <assert test="@ref = preceding::remove/@ref">what goes back came off</assert>
    </rule>
  </pattern>
</schema>
`;
