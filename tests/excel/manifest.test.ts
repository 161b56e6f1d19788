import { readFileSync } from 'node:fs';
import { inflateSync } from 'node:zlib';
import path from 'node:path';
import { OfficeAddinManifest } from 'office-addin-manifest';
import { ICON_SIZES, mark } from '../../scripts/icons/mark';
import { png } from '../../scripts/icons/png';
import { NAMESPACE } from '../../src/functions/kernel/catalogue';
import { checkManifest } from '../support/check-manifest';

const root = path.resolve(__dirname, '../..');
const file = path.join(root, 'manifest.xml');
const xml = readFileSync(file, 'utf8');

const changed = (from: string | RegExp, to: string): string => {
  const result = xml.replace(from, to);
  if (result === xml) throw new Error(`nothing to change: ${from}`);
  return result;
};

describe('manifest', () => {
  test('is sound', () => {
    expect(checkManifest(xml)).toEqual([]);
  });

  test.each<[string, string | RegExp, string, RegExp]>([
    ['open element', '</OfficeApp>', '', /well-formed/],
    ['another root type', 'xsi:type="TaskPaneApp"', 'xsi:type="ContentApp"', /root/],
    ['Version left out', /<Version>.*<\/Version>/, '', /<Version> is missing/],
    ['Permissions before DefaultSettings', /(<DefaultSettings>[\s\S]*<\/DefaultSettings>)([\s\S]*?)(<Permissions>.*<\/Permissions>)/, '$3$2$1', /<DefaultSettings> is missing or in the wrong place|not expected/],
    ['Label of the tab before its group', /(<CustomTab [^>]*>)([\s\S]*)(<Label resid="Tab.Label"\/>)/, '$1$3$2', /CustomTab/],
    ['Metadata before Page', /(<Page>[\s\S]*<\/Page>)(\s*)(<Metadata>[\s\S]*<\/Metadata>)/, '$3$2$1', /ExtensionPoint\[CustomFunctions\]/],
    ['two controls in the menu', /(<OfficeMenu [^>]*>\s*)(<Control[\s\S]*?<\/Control>)/, '$1$2$2', /OfficeMenu/],
    ['Id', /<Id>.*<\/Id>/, '<Id>joulewright</Id>', /GUID/],
    ['Version', /<Version>[\d.]+</, '<Version>1.0-beta<', /Version takes/],
    ['Version below 1.0', /<Version>[\d.]+</, '<Version>0.1.0.0<', /below 1.0/],
    ['locale', '>en-US<', '>English<', /DefaultLocale/],
    ['long description', /(<Description DefaultValue=")/, `$1${'x'.repeat(250)}`, /Description takes/],
    ['empty name', 'DisplayName DefaultValue="Joulewright"', 'DisplayName DefaultValue=""', /DisplayName/],
    ['provider', '<ProviderName>Joulewright<', '<ProviderName><', /ProviderName/],
    ['permissions', 'ReadWriteDocument<', 'Everything<', /Permissions/],
    ['host', '<Host Name="Workbook"/>', '<Host Name="Excel"/>', /Host Excel/],
    ['http', 'https://localhost:3000/functions.js"', 'http://localhost:3000/functions.js"', /not an https/],
    ['two resources of one id', 'bt:String id="Tab.Label"', 'bt:String id="Group.Label"', /two resources Group.Label/],
    ['unknown resource', 'resid="Tab.Label"', 'resid="Tab.Name"', /no resource Tab.Name/],
    ['resource of the wrong list', '<Title resid="GetStarted.Title"/>', '<Title resid="GetStarted.Description"/>', /belongs in ShortStrings/],
    ['resource that nobody uses', '<bt:ShortStrings>', '<bt:ShortStrings><bt:String id="Spare" DefaultValue="x"/>', /Spare is not used/],
    ['long resource id', /Functions\.Metadata\.Url/g, 'Functions.Metadata.Url.That.Is.Long', /resource id of/],
    ['long short string', 'DefaultValue="Selected cell"', `DefaultValue="${'x'.repeat(126)}"`, /Group.Label takes/],
    ['namespace', 'DefaultValue="JW"', 'DefaultValue="J-W"', /namespace J-W/],
    ['icon size', '<bt:Image size="80" resid="Icon.80"/>', '', /lacks size 80/],
    ['two controls of one id', 'id="Joulewright.Menu.Pane"', 'id="Joulewright.Button.Pane"', /two controls/],
    ['runtime that ends', 'lifetime="long"', 'lifetime="short"', /lifetime/],
    ['page beside the runtime', '<FunctionFile resid="Pane.Url"/>', '<FunctionFile resid="Handbook.Url"/>', /not the page of the runtime/],
    ['no runtime', /<Runtimes>[\s\S]*<\/Runtimes>/, '', /one Runtime/],
    ['no requirement', /<Requirements>[\s\S]*<\/Requirements>/, '', /SharedRuntime/],
  ])('a fault is found: %s', (_what, from, to, words) => {
    expect(checkManifest(changed(from, to)).join('\n')).toMatch(words);
  });

  test('Microsoft’s reader reads it', async () => {
    const read = await OfficeAddinManifest.readManifestFile(file);
    expect(read).toMatchObject({
      id: '321f2b00-abf0-4df5-90ed-202461d35b04', displayName: 'Joulewright', providerName: 'Joulewright', officeAppType: 'TaskPaneApp',
      hosts: ['Workbook'], permissions: 'ReadWriteDocument', defaultLocale: 'en-US',
    });
  });

  test('its namespace is that of the functions', () => {
    expect(xml).toContain(`<bt:String id="Functions.Namespace" DefaultValue="${NAMESPACE}"/>`);
  });
});

describe('icons', () => {
  const pixels = (bytes: Buffer): Buffer => {
    const parts: Buffer[] = [];
    for (let at = 8; at < bytes.length; at += bytes.readUInt32BE(at) + 12) {
      if (bytes.toString('latin1', at + 4, at + 8) === 'IDAT') parts.push(bytes.subarray(at + 8, at + 8 + bytes.readUInt32BE(at)));
    }
    return inflateSync(Buffer.concat(parts));
  };
  test.each(ICON_SIZES)('%i px is the mark as drawn', (size) => {
    const bytes = readFileSync(path.join(root, `src/excel/static/assets/icon-${size}.png`));
    expect(bytes.subarray(0, 8)).toEqual(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]));
    expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([size, size]);
    expect(pixels(bytes).equals(pixels(png(mark(size))))).toBe(true);
  });
  test('every icon that the manifest names is there', () => {
    for (const [, name] of xml.matchAll(/localhost:3000\/(assets\/[\w.-]+)/g)) expect(() => readFileSync(path.join(root, 'src/excel/static', name!))).not.toThrow();
  });
});
