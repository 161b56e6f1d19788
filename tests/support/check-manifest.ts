import { DOMParser, type Element } from '@xmldom/xmldom';

/**
 * Structure of an add-in-only manifest with custom functions and a shared runtime, checked without the network.
 * Order of elements after Microsoft's documentation of manifest element ordering; limits after its manifest reference.
 */

const APP = 'http://schemas.microsoft.com/office/appforoffice/1.1';
const OVERRIDES = 'http://schemas.microsoft.com/office/taskpaneappversionoverrides';
const TYPES = 'http://schemas.microsoft.com/office/officeappbasictypes/1.0';
const INSTANCE = 'http://www.w3.org/2001/XMLSchema-instance';

/** Children in their order: `name` once, `name?` at most once, `name+` once or more, `name*` any number. Looked up as name[type], then parent/name, then name. */
const ORDER: Readonly<Record<string, string>> = {
  OfficeApp:
    'Id AlternateId? Version ProviderName DefaultLocale DisplayName Description IconUrl? HighResolutionIconUrl? SupportUrl? AppDomains? Hosts? Requirements? DefaultSettings Permissions Dictionary? VersionOverrides? ExtendedOverrides?',
  AppDomains: 'AppDomain+',
  'OfficeApp/Hosts': 'Host+',
  Requirements: 'Sets? Methods?',
  Sets: 'Set+',
  DefaultSettings: 'SourceLocation',
  VersionOverrides: 'Description? Requirements? Hosts? Resources? WebApplicationInfo? EquivalentAddins?',
  'VersionOverrides/Hosts': 'Host+',
  'Host[Workbook]': 'Runtimes? AllFormFactors? DesktopFormFactor?',
  Runtimes: 'Runtime',
  AllFormFactors: 'ExtensionPoint',
  DesktopFormFactor: 'GetStarted? FunctionFile? ExtensionPoint+',
  'ExtensionPoint[CustomFunctions]': 'Script Page Metadata Namespace',
  'ExtensionPoint[PrimaryCommandSurface]': 'OfficeTab* CustomTab?',
  'ExtensionPoint[ContextMenu]': 'OfficeMenu+',
  Script: 'SourceLocation',
  Page: 'SourceLocation',
  Metadata: 'SourceLocation',
  GetStarted: 'Title Description LearnMoreUrl',
  OfficeTab: 'Group+',
  CustomTab: 'Group+ Label',
  OfficeMenu: 'Control',
  Group: 'OverriddenByRibbonApi? Label Icon Control+',
  'Control[Button]': 'OverriddenByRibbonApi? Label Supertip Icon Action Enabled?',
  Supertip: 'Title Description',
  Icon: 'Image+',
  'Action[ShowTaskpane]': 'TaskpaneId? SourceLocation Title?',
  'Action[ExecuteFunction]': 'FunctionName',
  Resources: 'Images? Urls? ShortStrings? LongStrings?',
  Images: 'Image*',
  Urls: 'Url*',
  ShortStrings: 'String*',
  LongStrings: 'String*',
};

/** The list that a resid must point into. */
const LIST: Readonly<Record<string, string>> = {
  Runtime: 'Urls', SourceLocation: 'Urls', FunctionFile: 'Urls', LearnMoreUrl: 'Urls',
  Namespace: 'ShortStrings', Label: 'ShortStrings', Title: 'ShortStrings', Description: 'LongStrings', Image: 'Images',
};

const TEXT_LIMIT: Readonly<Record<string, number>> = { ShortStrings: 125, LongStrings: 250 };
const PERMISSIONS = ['Restricted', 'ReadDocument', 'ReadAllDocument', 'WriteDocument', 'ReadWriteDocument'];
const HOSTS = ['Document', 'Mailbox', 'Notebook', 'Presentation', 'Project', 'Workbook', 'Database'];

const children = (node: Element): Element[] => Array.from(node.childNodes).filter((child): child is Element => child.nodeType === 1);
const typeOf = (node: Element): string | null => node.getAttributeNS(INSTANCE, 'type');
const parentOf = (node: Element): Element | undefined => (node.parentNode?.nodeType === 1 ? (node.parentNode as Element) : undefined);
const textOf = (node: Element | undefined): string => node?.textContent?.trim() ?? '';
const valueOf = (node: Element | undefined): string => node?.getAttribute('DefaultValue') ?? '';
const labelOf = (node: Element): string => `${parentOf(node)?.localName ?? ''}/${node.localName}${typeOf(node) === null ? '' : `[${typeOf(node)}]`}`;

function everyElement(root: Element): Element[] {
  return [root, ...children(root).flatMap(everyElement)];
}

function orderFaults(node: Element): string[] {
  const rule = ORDER[`${node.localName}[${typeOf(node)}]`] ?? ORDER[`${parentOf(node)?.localName}/${node.localName}`] ?? ORDER[node.localName ?? ''];
  if (rule === undefined) return [];
  const faults: string[] = [];
  const names = children(node).map((child) => child.localName);
  let place = 0;
  for (const [, name, many] of rule.matchAll(/(\w+)([?+*]?)/g)) {
    const first = place;
    while (names[place] === name && (place === first || many === '+' || many === '*')) place += 1;
    if (place === first && (many === '' || many === '+')) faults.push(`${labelOf(node)}: <${name}> is missing or in the wrong place`);
  }
  if (place < names.length) faults.push(`${labelOf(node)}: <${names[place]}> is not expected here`);
  return faults;
}

/** Faults of a manifest in words; none where it is sound. */
export function checkManifest(xml: string): string[] {
  let root: Element | null;
  try {
    root = new DOMParser({ onError: (level, message) => { if (level !== 'warning') throw new Error(message); } }).parseFromString(xml, 'text/xml').documentElement;
  } catch (error) {
    return [`not well-formed: ${(error as Error).message}`];
  }
  if (root?.localName !== 'OfficeApp' || root.namespaceURI !== APP || typeOf(root) !== 'TaskPaneApp') return ['the root must be OfficeApp of type TaskPaneApp'];
  const all = everyElement(root);
  return [...all.flatMap(orderFaults), ...headFaults(all), ...addressFaults(all), ...resourceFaults(all), ...controlFaults(all), ...runtimeFaults(all)];
}

function headFaults(all: readonly Element[]): string[] {
  const one = (name: string): Element | undefined => all.find((node) => node.localName === name && node.namespaceURI === APP);
  const faults: string[] = [];
  if (!/^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(textOf(one('Id')))) faults.push('Id is no GUID');
  if (!/^\d{1,5}(?:\.\d{1,5}){0,3}$/.test(textOf(one('Version')))) faults.push('Version takes up to four numbers of five digits');
  // Microsoft's validator: "Manifest Version Too Low"; Office itself passes over such a manifest without a word.
  if (/^0*\./.test(`${textOf(one('Version'))}.`)) faults.push('Version is below 1.0');
  if (!/^[a-z]{2,3}(?:-[A-Za-z0-9]+)*$/.test(textOf(one('DefaultLocale')))) faults.push('DefaultLocale is no language tag');
  for (const [name, limit] of [['DisplayName', 125], ['Description', 250]] as const) {
    const text = valueOf(one(name));
    if (text === '' || text.length > limit) faults.push(`${name} takes 1 to ${limit} characters`);
  }
  const provider = textOf(one('ProviderName'));
  if (provider === '' || provider.length > 125) faults.push('ProviderName takes 1 to 125 characters');
  if (!PERMISSIONS.includes(textOf(one('Permissions')))) faults.push(`Permissions: ${textOf(one('Permissions'))}`);
  for (const host of all) if (host.localName === 'Host' && host.namespaceURI === APP && !HOSTS.includes(host.getAttribute('Name') ?? '')) faults.push(`Host ${host.getAttribute('Name')}`);
  return faults;
}

function addressFaults(all: readonly Element[]): string[] {
  const addresses = all.filter((node) => node.hasAttribute('DefaultValue') && /Url$|^SourceLocation$|^Image$/.test(node.localName ?? '')).map(valueOf);
  const domains = all.filter((node) => node.localName === 'AppDomain').map(textOf);
  return [...addresses, ...domains].filter((address) => !address.startsWith('https://') || address.length > 2048).map((address) => `not an https address: ${address}`);
}

function resourceFaults(all: readonly Element[]): string[] {
  const faults: string[] = [];
  const lists = new Map<string, string>();
  for (const node of all) {
    if (node.namespaceURI !== TYPES || !node.hasAttribute('id')) continue;
    const id = node.getAttribute('id')!;
    const list = parentOf(node)?.localName ?? '';
    if (lists.has(id)) faults.push(`two resources ${id}`);
    lists.set(id, list);
    if (id === '' || id.length > 32) faults.push(`resource id of ${id.length} characters: ${id}`);
    const limit = TEXT_LIMIT[list];
    if (limit !== undefined && (valueOf(node) === '' || valueOf(node).length > limit)) faults.push(`${id} takes 1 to ${limit} characters`);
    if (id === 'Functions.Namespace' && !/^[A-Za-z][A-Za-z0-9._]{0,31}$/.test(valueOf(node))) faults.push(`namespace ${valueOf(node)}`);
  }
  const used = new Set<string>();
  for (const node of all) {
    const id = node.getAttribute('resid');
    if (id === null) continue;
    used.add(id);
    const list = lists.get(id);
    const wanted = LIST[node.localName ?? ''];
    if (list === undefined) faults.push(`${labelOf(node)}: no resource ${id}`);
    else if (wanted !== undefined && list !== wanted) faults.push(`${labelOf(node)}: ${id} stands in ${list}, belongs in ${wanted}`);
  }
  for (const id of lists.keys()) if (!used.has(id)) faults.push(`resource ${id} is not used`);
  return faults;
}

function controlFaults(all: readonly Element[]): string[] {
  const faults: string[] = [];
  const seen = new Set<string>();
  for (const node of all) {
    if (node.localName === 'Icon') {
      const sizes = children(node).map((image) => image.getAttribute('size'));
      for (const size of ['16', '32', '80']) if (!sizes.includes(size)) faults.push(`the icon of ${parentOf(node)?.getAttribute('id')} lacks size ${size}`);
    }
    if (!['Control', 'Group', 'CustomTab'].includes(node.localName ?? '')) continue;
    const id = node.getAttribute('id') ?? '';
    if (id === '' || id.length > 125) faults.push(`${node.localName}: id takes 1 to 125 characters`);
    if (seen.has(id)) faults.push(`two controls ${id}`);
    seen.add(id);
  }
  return faults;
}

/** Everything that shows a page must show the one page of the shared runtime. */
function runtimeFaults(all: readonly Element[]): string[] {
  const runtimes = all.filter((node) => node.localName === 'Runtime' && node.namespaceURI === OVERRIDES);
  if (runtimes.length !== 1) return ['one Runtime is needed'];
  const [runtime] = runtimes;
  const faults: string[] = [];
  const page = runtime!.getAttribute('resid');
  if (runtime!.getAttribute('lifetime') !== 'long') faults.push('a shared runtime needs lifetime="long"');
  for (const node of all) {
    const shows = node.localName === 'FunctionFile' || (node.localName === 'SourceLocation' && ['Page', 'Action'].includes(parentOf(node)?.localName ?? ''));
    if (shows && node.getAttribute('resid') !== page) faults.push(`${labelOf(node)}: not the page of the runtime`);
  }
  if (!all.some((node) => node.localName === 'Set' && node.getAttribute('Name') === 'SharedRuntime')) faults.push('Requirements lack SharedRuntime');
  return faults;
}
