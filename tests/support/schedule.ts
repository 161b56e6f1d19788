import type { TypedBook } from './sheet-text';

/** A small schedule as an office would keep it, correct in every cell. All figures are invented. */
const ofBoard = (column: string): string => `XLOOKUP([@from],Boards[board],Boards[${column}])`;
const ofDevice = (column: string): string => `XLOOKUP([@device],Devices[device],Devices[${column}])`;
const ofLink = (which: string, column: string): string => `XLOOKUP([@${which}],Devices[device],Devices[${column}])`;
const behindLink = (source: string, link: string, run: string): string =>
  `=IF([@[fed from]]="source",JW.IMP_SERIES(${source},[@[${run}]]),JW.IMP_SERIES(${source},${link},[@[${run}]]))`;

const TIMES = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5];
const stands = (cable: string, row: number): string =>
  `=1000*JW.CABLE_WITHSTAND_CURRENT(XLOOKUP(${cable}$8,Cables[cable],Cables[k]),XLOOKUP(${cable}$8,Cables[cable],Cables[size]),$A${row})`;

export const SCHEDULE: TypedBook = {
  sheets: {
    Sources: {
      A1: 'SOURCES',
      A2: 'Nominal voltage between lines', B2: 415, C2: 'V',
      A3: 'Voltage line to earth', B3: 240, C3: 'V',
      A4: 'Voltage factor, greatest fault', B4: 1.05, C4: '–',
      A5: 'Voltage factor, least fault', B5: 0.95, C5: '–',
      A7: 'Source, greatest', B7: '=JW.IMP_SERIES(JW.IMP_GRID(350,Un_V),JW.IMP_TRANSFORMER(1250,6,13.5,Un_V,c_max))', C7: 'mΩ',
      A8: 'Source, least', B8: '=JW.IMP_SERIES(JW.IMP_GRID(180,Un_V,1),JW.IMP_TRANSFORMER(1250,6,13.5,Un_V,c_max,FALSE))', C8: 'mΩ',
      A9: 'How it was worked', B9: '=JW.SHOW_WORKING("FAULT_3PH_MAX",Zs_max,Un_V,c_max)',
    },
    Boards: { A1: 'BOARDS' },
    Devices: { A1: 'DEVICES' },
    Cables: { A1: 'CABLE SCHEDULE' },
    Selectivity: { A1: 'SELECTIVITY' },
    Curves: {
      A1: 'CURVES', A7: 's', B7: 'A', C7: 'A', A8: 'time', B8: 'C02', C8: 'C04',
      ...Object.fromEntries(TIMES.flatMap((time, i) => [[`A${9 + i}`, time], [`B${9 + i}`, stands('B', 9 + i)], [`C${9 + i}`, stands('C', 9 + i)]])),
    },
    Lists: { A1: 'verdicts', A2: 'pass', A3: 'FAIL', A4: 'not shown', B1: 'size', ...Object.fromEntries([16, 25, 35, 50, 70].map((size, i) => [`B${2 + i}`, size])) },
  },
  names: {
    Un_V: 'Sources!$B$2', U0_V: 'Sources!$B$3', c_max: 'Sources!$B$4', c_min: 'Sources!$B$5', Zs_max: 'Sources!$B$7', Zs_min: 'Sources!$B$8',
    Zlink_20: 'Boards!$H$9', Zlink_hot: 'Boards!$I$9',
  },
  tables: [
    {
      name: 'Boards', sheet: 'Boards', at: 'A8',
      columns: [
        { name: 'board' }, { name: 'fed from' }, { name: 'length', unit: 'm' }, { name: 'size', unit: 'mm²' }, { name: 'metal' }, { name: 'runs', unit: '–' }, { name: 'return', unit: 'mm²' },
        { name: 'run 20 °C', unit: 'mΩ', formula: '=JW.IMP_CABLE([@length],[@size],[@metal],[@runs],20)' },
        { name: 'run hot', unit: 'mΩ', formula: '=JW.IMP_CABLE([@length],[@size],[@metal],[@runs],90)' },
        { name: 'return hot', unit: 'mΩ', formula: '=JW.IMP_CABLE([@length],[@return],[@metal],[@runs],90)' },
        { name: 'Z max', unit: 'mΩ', formula: behindLink('Zs_max', 'Zlink_20', 'run 20 °C') },
        { name: 'Z min', unit: 'mΩ', formula: behindLink('Zs_min', 'Zlink_hot', 'run hot') },
        { name: 'Z loop min', unit: 'mΩ', formula: '=JW.IMP_SERIES([@[Z min]],[@[return hot]])' },
        { name: 'Ik3 max', unit: 'kA', formula: '=JW.FAULT_3PH_MAX([@[Z max]],Un_V,c_max)' },
        { name: 'R/X', unit: '–', formula: '=JW.IMP_PART([@[Z max]],"R/X")' },
        { name: 'ip', unit: 'kA peak', formula: '=JW.FAULT_PEAK([@[Ik3 max]],[@[R/X]])' },
        { name: 'Ik3 min', unit: 'kA', formula: '=JW.FAULT_3PH_MIN([@[Z min]],Un_V,c_min)' },
      ],
      rows: [
        ['MSB', 'source', 8, 630, 'copper', 4, 630],
        ['HALL 1', 'MSB', 95, 240, 'copper', 2, 240],
        ['HALL 2', 'MSB', 120, 185, 'copper', 2, 185],
        ['STORE', 'MSB', 85, 150, 'aluminium', 1, 150],
      ],
    },
    {
      name: 'Devices', sheet: 'Devices', at: 'A8',
      columns: [{ name: 'device' }, { name: 'range' }, { name: 'rated', unit: 'A' }, { name: 'pre-arcing', unit: 'A²s' }, { name: 'total', unit: 'A²s' }, { name: 'read at', unit: 'kA' }],
      rows: [
        ['F1', 'gG range T', 400, 1.05e6, 2.6e6, 30], ['F2', 'gG range T', 315, 5.6e5, 1.45e6, 30], ['F3', 'gG range T', 160, 1.05e5, 2.9e5, 20],
        ['F4', 'gG range T', 125, 5.5e4, 1.6e5, 20], ['F5', 'gG range T', 63, 1.1e4, 3.1e4, 20],
      ],
    },
    {
      name: 'Cables', sheet: 'Cables', at: 'A8',
      columns: [
        { name: 'cable' }, { name: 'from' }, { name: 'length', unit: 'm' }, { name: 'metal' }, { name: 'insulation' }, { name: 'size', unit: 'mm²' }, { name: 'earth', unit: 'mm²' }, { name: 'device' },
        { name: 'hot', unit: '°C', formula: '=IF([@insulation]="PVC",70,90)' },
        { name: 'line 20 °C', unit: 'mΩ', formula: '=JW.IMP_CABLE([@length],[@size],[@metal],1,20)' },
        { name: 'line hot', unit: 'mΩ', formula: '=JW.IMP_CABLE([@length],[@size],[@metal],1,[@hot])' },
        { name: 'earth hot', unit: 'mΩ', formula: '=JW.IMP_CABLE([@length],[@earth],[@metal],1,[@hot])' },
        { name: 'Ik3 end', unit: 'kA', formula: `=JW.FAULT_3PH_MAX(JW.IMP_SERIES(${ofBoard('Z max')},[@[line 20 °C]]),Un_V,c_max)` },
        { name: 'Ik1 min', unit: 'kA', formula: `=JW.FAULT_LOOP_MIN(JW.IMP_SERIES(${ofBoard('Z loop min')},[@[line hot]],[@[earth hot]]),U0_V,c_min)` },
        { name: 'let-through', unit: 'A²s', formula: `=${ofDevice('total')}` },
        { name: 'level', unit: 'kA', formula: `=${ofDevice('read at')}` },
        { name: 'k', unit: 'A√s/mm²', formula: '=JW.CABLE_K([@metal],[@insulation],[@size])' },
        { name: 'k²S²', unit: 'A²s', formula: '=JW.CABLE_WITHSTAND([@k],[@size])' },
        { name: 'withstand', formula: `=JW.LETTHROUGH_TEST([@[let-through]],[@[k²S²]],[@level],${ofBoard('Ik3 max')})` },
        { name: 'drop', unit: 'V', formula: '=JW.VOLT_DROP(80,0.9,[@[line hot]])' },
      ],
      rows: [
        ['C01', 'HALL 1', 40, 'copper', 'XLPE', 70, 35, 'F3'], ['C02', 'HALL 1', 55, 'copper', 'PVC', 50, 25, 'F4'], ['C03', 'HALL 2', 45, 'copper', 'XLPE', 70, 35, 'F3'],
        ['C04', 'HALL 2', 30, 'copper', 'XLPE', 95, 50, 'F4'], ['C05', 'STORE', 70, 'copper', 'PVC', 16, 16, 'F5'], ['C06', 'STORE', 50, 'aluminium', 'XLPE', 35, 35, 'F5'],
      ],
    },
    {
      name: 'Pairs', sheet: 'Selectivity', at: 'A8',
      columns: [
        { name: 'major' }, { name: 'minor' }, { name: 'read at', unit: 'kA' },
        { name: 'In major', unit: 'A', formula: `=${ofLink('major', 'rated')}` },
        { name: 'In minor', unit: 'A', formula: `=${ofLink('minor', 'rated')}` },
        { name: 'type major', formula: `=${ofLink('major', 'range')}` },
        { name: 'type minor', formula: `=${ofLink('minor', 'range')}` },
        { name: 'ratio', unit: '–', formula: '=JW.SELECT_RATIO([@[In major]],[@[In minor]])' },
        { name: 'by ratio', formula: '=JW.SELECT_RATIO_TEST([@[In major]],[@[In minor]],[@[type major]],[@[type minor]])' },
        { name: 'total minor', unit: 'A²s', formula: `=${ofLink('minor', 'total')}` },
        { name: 'pre-arcing major', unit: 'A²s', formula: `=${ofLink('major', 'pre-arcing')}` },
        { name: 'minor level', unit: 'kA', formula: `=${ofLink('minor', 'read at')}` },
        { name: 'by joule integral', formula: '=JW.SELECT_JOULE_TEST([@[total minor]],[@[pre-arcing major]],[@[minor level]],[@[read at]])' },
      ],
      rows: [['F1', 'F3', 20], ['F2', 'F4', 20], ['F3', 'F5', 20]],
    },
  ],
};
