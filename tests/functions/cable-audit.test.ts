import { valueOf } from '../support/evaluate';

describe('one feeder from the grid to the earth conductor', () => {
  /*
   * By hand, with no part of this project: 500 and 250 MVA behind 1000 kVA, 6 %, 10.5 kW, 400 V; 30 m of 2 × 240 mm² and 85 m of
   * 25 mm² copper with earth conductors of 2 × 240 and 16 mm²; 20 °C and 90 °C. Greatest K_T = 0.95·1.05/(1 + 0.6·0.05907).
   */
  const CURVE = '{250,3600;320,100;580,5;900,0.4;1450,0.1;4000,0.004}';
  const COLD = 'JW.IMP_SERIES(JW.IMP_GRID(500,400),JW.IMP_TRANSFORMER("1 MVA",6,10.5,"0.4 kV"),JW.IMP_CABLE(30,240,"cu",2),JW.IMP_CABLE(85,"25 mm²","cu"))';
  const HOT = 'JW.IMP_SERIES(JW.IMP_GRID(250,400,1),JW.IMP_TRANSFORMER(1000,6,10.5,400,,FALSE),JW.IMP_CABLE(30,240,"cu",2,90),JW.IMP_CABLE(85,25,"cu",1,90))';
  const LOOP = `JW.IMP_SERIES(${HOT},JW.IMP_CABLE(30,240,"cu",2,90),JW.IMP_CABLE(85,16,"cu",1,90))`;
  const I1 = `JW.FAULT_LOOP_MIN(${LOOP},230)`;
  const TIME = `JW.CURVE_TIME(${CURVE},1000*${I1},10,"slow")`;

  test.each([
    [`JW.FAULT_3PH_MAX(${COLD},400)`, 3.62478],
    [`JW.FAULT_3PH_MIN(${HOT},400)`, 2.60396],
    [`JW.FAULT_PEAK(JW.FAULT_3PH_MAX(${COLD},400),JW.IMP_PART(${COLD},"R/X"))`, 5.22882],
    [`JW.IMP_PART(${LOOP},"Z")`, 210.48],
    [I1, 1.0381],
    [TIME, 0.348469],
    // √(1038.10² · 0.348469)/143
    [`JW.CABLE_MIN_SIZE(JW.LETTHROUGH_PROSPECTIVE(${I1},${TIME}),JW.CABLE_K("cu","xlpe"))`, 4.28536],
    // 0.95·230/(580·1.1)
    [`JW.LOOP_MAX(JW.CURVE_CURRENT(${CURVE},5,10,"slow"),230)`, 342.476],
  ])('%#', (formula, byHand) => {
    expect((valueOf(`=${formula}`) as number) / byHand).toBeCloseTo(1, 5);
  });
});

describe('edges of the input', () => {
  test('third_pct of a cell formatted as 35 % arrives as 0.35 and would lower nothing', () => {
    expect(valueOf('=JW.HARMONIC_CURRENT(100,35)') as number).toBeCloseTo(122.093, 3); // 3·0.35·100/0.86
    expect(valueOf('=JW.HARMONIC_CURRENT(100,0.35)')).toBe(100);
    expect(valueOf('=JW.CAUTION("HARMONIC_CURRENT",100,0.35)')).toBe('third_pct is 0.35 %: a fraction typed for per cent?');
    expect(valueOf('=JW.CAUTION("HARMONIC_CURRENT",100,35)')).toBe('');
  });

  test('a power factor of 1 with a rounding above it is 1', () => {
    expect(valueOf('=JW.VOLT_DROP(100,1+1E-12,"30+4i")') as number).toBeCloseTo(Math.sqrt(3) * 3, 9); // √3·100 A·30 mΩ
  });
});

describe('cautions', () => {
  // IEC 60364-4-43, 434.5.2: below 0.1 s the asymmetry of the current is of importance.
  test('CABLE_WITHSTAND_CURRENT below 0.1 s', () => {
    expect(valueOf('=JW.CAUTION("CABLE_WITHSTAND_CURRENT",115,25,"20 ms")')).toBe('below 0.1 s the d.c. part of the fault counts: compare joule integrals (CABLE_WITHSTAND)');
    expect(valueOf('=JW.CAUTION("CABLE_WITHSTAND_CURRENT",115,25,0.1)')).toBe('');
  });

  // 0.95·400/160 = 2375 mΩ, where 0.95·230/160 = 1366 mΩ is the limit of a 230/400 V network.
  test('a voltage between lines where line to earth is asked', () => {
    const words = 'u0_V is 400 V: between lines, where line to earth is asked?';
    expect(valueOf('=JW.LOOP_MAX(160,400)')).toBe(2375);
    expect(valueOf('=JW.CAUTION("LOOP_MAX",160,400)')).toBe(words);
    expect(valueOf('=JW.CAUTION("FAULT_LOOP_MIN","120+31i","0.4 kV")')).toBe(words);
    expect(valueOf('=JW.CAUTION("FAULT_LOOP_MAX","120+31i",400)')).toBe(words);
    expect(valueOf('=JW.CAUTION("LOOP_MAX",160,230)&JW.CAUTION("FAULT_LOOP_MIN","120+31i",347)')).toBe('');
  });
});
