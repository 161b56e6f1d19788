import type { ShippedWork } from './shipped';

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

const apart = (licence: string): boolean => licence.startsWith('LGPL');

const INTRODUCTION = `<!-- Written by \`npm run sbom\` from the built dist/; do not edit. -->
# Works of others in Joulewright

Joulewright is under the MIT License (\`LICENSE\`). What of others is shipped with it stands here, with the licences and notices. The same
as data: \`docs/sbom.cdx.json\` (CycloneDX 1.6). What only builds and tests Joulewright is not shipped and not listed.
`;

const APART = `## Apart and replaceable

The workbench's grid and its framework are under the LGPL, version 3. They are no part of our program: \`dist/workbench/vendor/\` holds them
as their packages do, byte for byte, and the page loads them as scripts of their own. Put another version of the same file there and reload
the page; nothing has to be built. Their licence texts (LGPL and GPL) and \`NOTICE.txt\` stand beside them.

Microsoft's Office scripts in \`dist/excel/office/\` are copied unchanged under Microsoft's own licence, \`dist/excel/office/LICENSE.md\`.
`;

/** What is shipped, as a page that also carries the notices of what the bundles hold. */
export function licencesPage(works: readonly ShippedWork[], fontLicence: string): string {
  const bundled = works.filter(({ bundledIn }) => bundledIn.length > 0);
  const copied = works.filter(({ files }) => files.length > 0);
  const fonts = copied.filter(({ licence }) => licence.includes('OFL-1.1'));
  return `${[
    INTRODUCTION,
    '## Inside our bundles\n',
    row(['work', 'version', 'licence', 'in']), row(['---', '---', '---', '---']),
    ...bundled.map(({ name, version, licence, bundledIn }) => row([name, version, licence, bundledIn.map((bundle) => `dist/${bundle}`).join(', ')])),
    '\n## Files copied as they are\n',
    row(['work', 'version', 'licence', 'files']), row(['---', '---', '---', '---']),
    ...copied.map(({ name, version, licence, files }) => row([name, version, apart(licence) ? `**${licence}**` : licence, files.map((file) => `dist/${file}`).join('<br>')])),
    `\n${APART}`,
    '## Notices',
    ...bundled.map(({ name, version, notice }) => `\n### ${name} ${version}\n\n\`\`\`\n${notice}\n\`\`\``),
    ...fonts.map(({ name, version }) => `\n### ${name} ${version}\n\n\`\`\`\n${fontLicence.trim()}\n\`\`\``),
  ].join('\n')}\n`;
}
