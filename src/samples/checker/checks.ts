/** One figure of the colleague, worked again from the sources. */
export interface Check {
  item: string;
  unit: string;
  /** Formula of the colleague's cell. */
  designer: string;
  tolerance: number;
  /** Our function and its arguments. */
  call: readonly [name: string, args: string];
  class: 'A' | 'B' | 'C' | '–';
  remark: string;
}

const cable = (name: string, column: string): string => `XLOOKUP("${name}",SourceCables[cable],SourceCables[${column}])`;
const device = (name: string, column: string): string => `XLOOKUP("${name}",SourceDevices[device],SourceDevices[${column}])`;
const design = (name: string, column: string): string => `XLOOKUP("${name}",Design[cable],Design[${column}])`;
const given = (item: string): string => `XLOOKUP("${item}",Given[item],Given[value])`;
const withstand = (name: string): readonly [string, string] =>
  ['LETTHROUGH_TEST', `${cable(name, 'let-through')},${cable(name, 'k²S²')},${cable(name, 'read at')},${cable(name, 'Ik3 max')}`];

const MSB = 'JW.IMP_SERIES(Zs_max,Z_msb)';
const KILN = 'JW.IMP_SERIES(Zs_max,Z_kiln)';

/** The figures checked; A changes a verdict on safety, B is wrong on the safe side or small, C is of form. */
export const CHECKS: readonly Check[] = [
  { item: 'Ik3 at MSB', unit: 'kA', designer: given('Ik3 at MSB'), tolerance: 1, call: ['FAULT_3PH_MAX', `${MSB},Un_V`], class: '–', remark: '–' },
  { item: 'Z of one transformer', unit: 'mΩ', designer: given('Z of one transformer'), tolerance: 1, call: ['IMP_TRANSFORMER', 'TR_kVA,TR_uk_pct,TR_loss_kW,Un_V'], class: '–', remark: '–' },
  { item: 'ip at KILN 1', unit: 'kA peak', designer: given('ip at KILN 1'), tolerance: 1, call: ['FAULT_PEAK', `JW.FAULT_3PH_MAX(${KILN},Un_V),JW.IMP_PART(${KILN},"R/X")`], class: 'A', remark: 'κ·Ik without √2: r.m.s. held against a peak' },
  { item: 'X1: R hot', unit: 'mΩ', designer: design('X1', 'R hot'), tolerance: 1, call: ['IMP_PART', `${cable('X1', 'line hot')},"R"`], class: 'A', remark: 'Taken at 20 °C in a least fault; its neighbours are warmed' },
  { item: 'X1: Ik1 min', unit: 'kA', designer: design('X1', 'Ik1 min'), tolerance: 1, call: ['FAULT_LOOP_MIN', `${cable('X1', 'loop')},U0_V`], class: 'A', remark: 'c of the greatest fault in a least one' },
  { item: 'X3: Ik1 min', unit: 'kA', designer: design('X3', 'Ik1 min'), tolerance: 1, call: ['FAULT_LOOP_MIN', `${cable('X3', 'loop')},U0_V`], class: 'A', remark: 'Voltage between lines taken for line to earth' },
  { item: 'X6: Ik1 min', unit: 'kA', designer: design('X6', 'Ik1 min'), tolerance: 1, call: ['FAULT_LOOP_MIN', `${cable('X6', 'loop')},U0_V`], class: '–', remark: '–' },
  { item: 'X1: time allowed', unit: 's', designer: given('limit at X1'), tolerance: 1, call: ['DISCONNECT_LIMIT', '"TN","final",U0_V'], class: 'A', remark: '0.4 s is for up to 230 V' },
  { item: 'X2: k²S²', unit: 'A²s', designer: design('X2', 'k²S²'), tolerance: 1, call: ['CABLE_WITHSTAND', `${cable('X2', 'k')},${cable('X2', 'size')}`], class: 'B', remark: 'k of XLPE for a PVC cable; the margin stays' },
  { item: 'X5: withstand', unit: '', designer: design('X5', 'withstand'), tolerance: 1, call: withstand('X5'), class: 'A', remark: 'Verdict typed over the formula: the figures of its row say FAIL' },
  { item: 'X6: withstand', unit: '', designer: design('X6', 'withstand'), tolerance: 1, call: withstand('X6'), class: 'A', remark: 'Let-through read at the level of another board' },
  { item: 'X4: let-through', unit: 'A²s', designer: design('X4', 'let-through'), tolerance: 1, call: ['UNIT_CONVERT', `${cable('X4', 'let-through')},"A²s","A²s"`], class: 'B', remark: 'In thousands of A²s beside cells in A²s' },
  { item: 'X4: volt drop', unit: 'V', designer: design('X4', 'drop'), tolerance: 2, call: ['VOLT_DROP', `${cable('X4', 'load')},${cable('X4', 'pf')},${cable('X4', 'line hot')}`], class: 'B', remark: 'Typed over the formula: does not follow its row' },
  { item: 'X4: load', unit: 'A', designer: given('load of X4'), tolerance: 1, call: ['LOAD_CURRENT', '69.6,0.88,Un_V'], class: '–', remark: '–' },
  { item: 'F32: let-through', unit: 'A²s', designer: given('let-through of F32'), tolerance: 5, call: ['UNIT_CONVERT', `${device('F32', 'total')},"A²s","A²s"`], class: 'B', remark: 'Prospective current for 10 ms: a link lets through far less' },
  { item: 'F32: I2', unit: 'A', designer: given('I2 of F32'), tolerance: 1, call: ['CONVENTIONAL_CURRENT', `${device('F32', 'rated')},"gG"`], class: 'A', remark: '1.45 times is for miniature breakers: gG takes 1.6' },
  { item: 'Q5: breaks, serves again', unit: '', designer: given('Q5 breaks'), tolerance: 1, call: ['BREAKING_TEST', `Ik_press,${device('Q5', 'Icu')},${device('Q5', 'Ics')},"service"`], class: 'A', remark: 'Icu taken where the way must serve again: Ics rules' },
  {
    item: 'F31 over F32 by joule', unit: '', designer: given('F31 over F32 by joule'), tolerance: 1,
    call: ['SELECT_JOULE_TEST', `${device('F32', 'total')},${device('F31', 'pre-arcing')},${device('F32', 'at')},${device('F31', 'at')}`], class: 'A', remark: 'Pre-arcing held against pre-arcing: the minor’s total counts',
  },
  {
    item: 'F33 over F34 by ratio', unit: '', designer: given('F33 over F34 by ratio'), tolerance: 1,
    call: ['SELECT_RATIO_TEST', `${device('F33', 'rated')},${device('F34', 'rated')},${device('F33', 'type')},${device('F34', 'type')}`], class: 'A', remark: '1.6 to 1 counts within one range only',
  },
  { item: 'X6: neutral current', unit: 'A', designer: given('neutral of X6'), tolerance: 1, call: ['HARMONIC_CURRENT', `${cable('X6', 'load')},28,"neutral"`], class: 'C', remark: 'Left blank: the drives load the neutral' },
];
