import { CellError } from '../../../src/functions/kernel/cell';
import { SmallWorkbook, errorOf, run } from './sheet';

/** Results and their digits as the help pages of the functions print them, unless a line says otherwise. */
const printed: readonly [formula: string, figure: number, digits: number][] = [
  ['PMT(8%/12,10,10000)', -1037.03, 2], ['PMT(8%/12,10,10000,0,1)', -1030.16, 2], ['PV(8%/12,240,500,,0)', -59777.15, 2],
  ['FV(6%/12,10,-200,-500,1)', 2581.40, 2], ['NPER(1%,-100,-1000,10000,1)', 59.6738657, 7], ['RATE(48,-200,8000)*12', 0.0924, 4],
  ['IPMT(10%/12,1,36,8000)', -66.67, 2], ['PPMT(8%,10,10,200000)', -27598.05, 2], ['NPV(10%,-10000,3000,4200,6800)', 1188.44, 2],
  ['NPV(8%,{8000,9200,10000},{12000,14500})', 41922.06, 2], ['IRR({-70000,12000,15000,18000,21000,26000})', 0.0866, 4],
  ['XNPV(0.09,{-10000,2750,4250,3250,2750},{39448,39508,39751,39859,39904})', 2086.65, 2],
  ['XIRR({-10000,2750,4250,3250,2750},{39448,39508,39751,39859,39904})', 0.37336253, 8],
  ['MIRR({-120000,39000,30000,21000,37000,46000},10%,12%)', 0.126094, 6], ['SLN(30000,7500,10)', 2250, 2], ['SYD(30000,7500,10,1)', 4090.91, 2],
  ['DDB(2400,300,10,2,1.5)', 306, 2], ['EFFECT(0.0525,4)', 0.0535427, 7], ['NOMINAL(0.053543,4)', 0.05250032, 8],
  ['CUMIPMT(0.09/12,360,125000,13,24,0)', -11135.23213, 5], ['CUMPRINC(0.09/12,360,125000,13,24,0)', -934.1071, 4],
  ['ERF(0.745)', 0.70792892, 8], ['ERF(0,1)', 0.84270079, 8], ['ERFC(1)', 0.15729921, 8], ['GAMMALN(4)', 1.7917595, 7],
  ['NORM.DIST(42,40,1.5,TRUE)', 0.9087888, 7], ['NORM.DIST(42,40,1.5,FALSE)', 0.10934, 6], ['NORM.S.INV(0.908789)', 1.3333347, 7],
  ['BINOM.DIST(6,10,0.5,FALSE)', 0.2050781, 7], ['POISSON.DIST(2,5,TRUE)', 0.124652, 6], ['WEIBULL.DIST(105,20,100,TRUE)', 0.929581, 6],
  ['CONVERT(1,"lbm","kg")', 0.4535924, 7], ['CONVERT(68,"F","C")', 20, 10], ['CONVERT(CONVERT(100,"ft","m"),"ft","m")', 9.290304, 9],
  ['CONVERT(1,"HP","W")', 745.69987, 5], ['CONVERT(20,"C","F")', 68, 10], ['CONVERT(1,"kWh","J")', 3.6e6, 5], ['CONVERT(1,"Nmi","km")', 1.852, 12],
  ['SERIESSUM(PI()/4,0,2,{1,-0.5,0.0416666667,-0.0013888889})', 0.707103, 6],
  ['STDEV.S({1345,1301,1368,1322,1310,1370,1318,1350,1303,1299})', 27.46391572, 8], ['STDEV.P({1345,1301,1368,1322,1310,1370,1318,1350,1303,1299})', 26.05455814, 8],
  ['VAR.S({1345,1301,1368,1322,1310,1370,1318,1350,1303,1299})', 754.2667, 4], ['GEOMEAN({4,5,8,7,11,4,3})', 5.476986970, 9], ['HARMEAN({4,5,8,7,11,4,3})', 5.028376, 6],
  ['AVEDEV({4,5,6,7,5,4,3})', 1.020408, 6], ['DEVSQ({4,5,8,7,11,4,3})', 48, 10], ['TRIMMEAN({4,5,6,7,2,3,4,5,1,2,3},0.2)', 3.778, 3],
  ['FORECAST.LINEAR(30,{6,7,9,15,21},{20,28,31,38,40})', 10.607253, 6], ['CORREL({3,2,4,5,6},{9,7,12,15,17})', 0.997054486, 9],
  ['SLOPE({2,3,9,1,8,7,5},{6,5,11,7,5,4,4})', 0.305556, 6], ['INTERCEPT({2,3,9,1,8},{6,5,11,7,5})', 0.0483871, 7], ['RSQ({2,3,9,1,8,7,5},{6,5,11,7,5,4,4})', 0.05795, 5],
  ['COVARIANCE.P({3,2,4,5,6},{9,7,12,15,17})', 5.2, 10], ['COVARIANCE.S({2,4,8},{5,11,12})', 9.666666667, 9],
  ['PERCENTILE.INC({1,2,3,4},0.3)', 1.9, 10], ['PERCENTILE.EXC({6,7,15,36,39,40,41,42,43,47,49},0.25)', 15, 10], ['QUARTILE.INC({1,2,4,7,8,9,10,12},1)', 3.5, 10],
  ['QUARTILE.EXC({6,7,15,36,39,40,41,42,43,47,49},3)', 43, 10], ['YEARFRAC(40909,41120,0)', 0.58055556, 8], ['YEARFRAC(40909,41120,1)', 0.57650273, 8], ['YEARFRAC(40909,41120,3)', 0.57808219, 8],
  ['MROUND(1.3,0.2)', 1.4, 12], ['MDETERM({1,3,8,5;1,3,6,1;1,1,1,0;7,3,10,2})', 88, 9], ['IMABS("5+12i")', 13, 12], ['IMARGUMENT("3+4i")', 0.92729522, 8],
];

describe('figures as the help pages print them', () => {
  it.each(printed)('%s = %d', (formula, figure, digits) => {
    expect(run(formula)).toBeCloseTo(figure, digits);
  });
});

const exact: readonly [formula: string, result: number | string | boolean][] = [
  // Help pages of the complex functions; the last figures as far as they print them.
  ['COMPLEX(3,4)', '3+4i'], ['COMPLEX(3,4,"j")', '3+4j'], ['COMPLEX(0,1)', 'i'], ['COMPLEX(1,0)', '1'], ['COMPLEX(1,-1)', '1-i'], ['COMPLEX(0,0)', '0'],
  ['IMSUM("3+4i","5-3i")', '8+i'], ['IMSUB("13+4i","5+3i")', '8+i'], ['IMPRODUCT("3+4i","5-3i")', '27+11i'], ['IMPRODUCT("1+2i",30)', '30+60i'],
  ['IMDIV("-238+240i","10+24i")', '5+12i'], ['IMPOWER("2+3i",3)', '-46+9i'], ['IMCONJUGATE("3+4i")', '3-4i'], ['IMREAL("6-9i")', 6], ['IMAGINARY("0-j")', -1],
  ['IMSQRT("1+i")', '1.09868411346781+0.455089860562227i'], ['IMEXP("1+i")', '1.46869393991589+2.28735528717884i'], ['IMSUM("0.1+0.2i","0.2+0.1i")', '0.3+0.3i'],
  ['IMSIN("4+3i")', '-7.61923172032141-6.548120040911i'],
  ['BIN2DEC(1100100)', 100], ['BIN2DEC(1111111111)', -1], ['DEC2BIN(9,4)', '1001'], ['DEC2BIN(-100)', '1110011100'], ['DEC2HEX(100,4)', '0064'], ['DEC2HEX(-54)', 'FFFFFFFFCA'],
  ['HEX2DEC("A5")', 165], ['HEX2DEC("FFFFFFFF5B")', -165], ['HEX2BIN("F",8)', '00001111'], ['OCT2DEC(54)', 44], ['BITAND(13,25)', 9], ['BITOR(23,10)', 31], ['BITXOR(5,3)', 6],
  ['BITLSHIFT(4,2)', 16], ['BITRSHIFT(13,2)', 3], ['BASE(15,2,10)', '0000001111'], ['DECIMAL("FF",16)', 255],
  ['FACT(5)', 120], ['COMBIN(8,2)', 28], ['PERMUT(100,3)', 970200], ['GCD(24,36)', 12], ['LCM(24,36)', 72], ['SUMX2MY2({2,3,9,1,8,7,5},{6,5,11,7,5,4,4})', -55],
  ['SUMX2PY2({2,3,9,1,8,7,5},{6,5,11,7,5,4,4})', 521], ['SUMXMY2({2,3,9,1,8,7,5},{6,5,11,7,5,4,4})', 79],
  ['MROUND(-10,-3)', -9], ['CEILING(0.234,0.01)', 0.24], ['CEILING.MATH(24.3,5)', 25], ['CEILING.MATH(-5.5,2,-1)', -6], ['FLOOR.MATH(-5.5,2,-1)', -4],
  ['ODD(1.5)', 3], ['ODD(-2)', -3], ['EVEN(-1)', -2], ['EVEN(2)', 2], ['TRUNC(-8.9)', -8], ['ROUNDUP(31415.92654,-2)', 31500], ['ROUNDDOWN(-3.14159,1)', -3.1], ['ROUND(21.5,-1)', 20], ['ROUND(626.3,-3)', 1000],
  ['RANK.AVG(94,{89,88,92,101,94,97,95})', 4], ['RANK.EQ(7,{7,3.5,3.5,1,2},1)', 5], ['MODE.SNGL({5.6,4,4,3,2,4})', 4], ['LARGE({3,4,5,2,3,4,5,6,4,7},3)', 5], ['MEDIAN(1,2,3,4,5,6)', 3.5],
  ['MAXA({0,0.2,0.5,0.4,TRUE})', 1], ['AVERAGEA({10,7,9,2,"n/a"})', 5.6], ['COUNTA({1,"",TRUE})', 3],
  ['XMATCH(25,{10,20,30},-1)', 2], ['XMATCH(25,{10,20,30},1)', 3], ['XMATCH("b*",{"ab","bc"},2)', 2], ['XLOOKUP(2,{1,2,2,3},{"a","b","c","d"},,0,-1)', 'c'], ['HLOOKUP("b",{"a","b";1,2},2,FALSE)', 2],
  ['VLOOKUP("B*",{"ab",1;"bc",2},2,FALSE)', 2], ['LOOKUP(4.19,{4.14,4.19,5.17},{"r","o","y"})', 'o'], ['LOOKUP("C",{"a","b","c","d";1,2,3,4})', 3],
  ['TEXTBEFORE("Red-Riding-Hood","-",-1)', 'Red-Riding'], ['TEXTAFTER("Red-Riding-Hood","-",2)', 'Hood'], ['TEXTAFTER("abc","x",,,,"none")', 'none'], ['TEXTBEFORE("abc","-",1,0,1)', 'abc'],
  ['SUBSTITUTE("Quarter 1, 2011","1","2",3)', 'Quarter 1, 2012'], ['REPLACE("2009",3,2,"10")', '2010'], ['SEARCH("e","Statements",6)', 7], ['SEARCH("~*","a*b")', 2], ['FIND("M","Miriam McGovern",3)', 8],
  ['NUMBERVALUE("2.500,27",",",".")', 2500.27], ['NUMBERVALUE("3.5%")', 0.035], ['FIXED(-1234.567,-1,TRUE)', '-1230'], ['FIXED(44.332)', '44.33'], ['CHAR(128)', '€'], ['CODE("€")', 128], ['UNICODE("€")', 8364], ['UNICHAR(937)', 'Ω'],
  ['TEXT(1.005,"0.00")', '1.01'], ['TEXT(0.000123,"0.00E+00")', '1.23E-04'], ['TEXT(-1.5,"+0.0;-0.0")', '-1.5'], ['TEXT(0.75,"[h]:mm")', '18:00'], ['TEXT("pump","@ 1")', 'pump 1'], ['TEXT(TRUE,"0")', 'TRUE'],
  ['UPPER("straße é")', 'STRAßE É'], ['PROPER("2-way street")', '2-Way Street'], ['CLEAN(CHAR(9)&"ab"&CHAR(10))', 'ab'], ['TEXTJOIN({"-","/"},TRUE,1,2,3)', '1-2/3'], ['VALUE("$1,000")', 1000], ['T(TRUE)', ''], ['N(TRUE)', 1],
  // Joining a number to a text: 15 digits, written out up to 20 characters.
  ['1/3000&""', '0.000333333333333333'], ['1/30000&""', '3.33333333333333E-05'], ['12345678901234567890&""', '12345678901234600000'], ['-1E21&""', '-1E+21'], ['0.1+0.2&""', '0.3'],
  ['DATE(2008,14,2)', 39846], ['DATE(2008,-3,2)', 39327], ['EDATE(40558,1)', 40589], ['EDATE(DATE(2024,1,31),1)', 45351], ['EOMONTH(40544,-3)', 40482], ['WEEKDAY(39492,2)', 4], ['WEEKNUM(40977)', 10], ['WEEKNUM(40977,2)', 11],
  ['ISOWEEKNUM(40977)', 10], ['DATEDIF(DATE(2001,6,1),DATE(2002,8,15),"YD")', 75], ['DATEDIF(DATE(2001,1,1),DATE(2003,1,1),"Y")', 2], ['DAYS360(DATE(2011,1,30),DATE(2011,2,1))', 1], ['DAYS360(DATE(2011,1,1),DATE(2011,12,31))', 360],
  ['NETWORKDAYS(DATE(2012,10,1),DATE(2013,3,1))', 110], ['NETWORKDAYS(DATE(2012,10,1),DATE(2013,3,1),DATE(2012,11,22))', 109], ['WORKDAY(DATE(2008,10,1),151)', 39933], ['HOUR(0.75)', 18], ['MINUTE(TIME(12,45,30))', 45], ['SECOND(TIME(4,48,18))', 18],
  ['TIME(12,0,0)', 0.5], ['DATEVALUE("22-May-2011")', 40685], ['DAY(60)', 29], ['MONTH(60)', 2], ['YEAR(2958465)', 9999], ['WEEKDAY(1)', 1],
  ['IFS(FALSE,1,TRUE,2)', 2], ['XOR(TRUE,TRUE,TRUE)', true], ['AND(TRUE,"TRUE")', true], ['IFNA(NA(),"none")', 'none'], ['SUM(1,)', 1], ['AVERAGE(1,)', 0.5], ['COUNT(1,,"2","x")', 3], ['ISEVEN(-2.9)', true], ['TYPE({1,2})', 64], ['TYPE(1/0)', 16], ['ERROR.TYPE(#NAME?)', 5],
];

// Abramowitz and Stegun, Handbook of Mathematical Functions, table 7.1; the last two from the asymptotic series 7.1.23.
it.each([['ERF(0.5)', 0.5204998778], ['ERF(2)', 0.9953222650], ['ERFC(-2)', 1.9953222650], ['ERFC(2)', 0.0046777350], ['ERFC(3)', 2.209049699858544e-5], ['ERFC(5)', 1.5374597944280349e-12]])('%s', (formula, figure) => {
  const got = run(formula) as number;
  expect(Math.abs(got / figure - 1)).toBeLessThan(1e-8);
});

describe('results known to the last digit', () => {
  it.each(exact)('%s = %p', (formula, result) => {
    expect(run(formula)).toBe(result);
  });
});

const errors: readonly [formula: string, code: string, words: string][] = [
  ['"abc"*2', '#VALUE!', '"abc" is not a number'], ['IF("maybe",1,2)', '#VALUE!', '"maybe" is not TRUE or FALSE'], ['5/0', '#DIV/0!', 'division by zero'],
  ['SQRT(-1)', '#NUM!', 'the square root of a negative number'], ['(-8)^(1/3)', '#NUM!', 'the result is not a number or too large'], ['LOG(5,1)', '#DIV/0!', 'a logarithm to base 1'], ['ASIN(2)', '#NUM!', 'the result is not a number or too large'],
  ['CHOOSE(3,1,2)', '#VALUE!', 'CHOOSE has 2 values, number 3 is asked'], ['LEFT("abc",-1)', '#VALUE!', 'a count of characters must be 0 or more, got -1'], ['MID("abc",0,1)', '#VALUE!', 'a position in a text must be 1 or more, got 0'],
  ['FIND("z","abc")', '#VALUE!', '"z" does not occur'], ['CHAR(256)', '#VALUE!', 'CHAR takes 1 to 255, got 256'], ['COMPLEX(1,2,"k")', '#VALUE!', 'the suffix is i or j, got "k"'], ['IMABS("3 + 4i")', '#NUM!', '"3 + 4i" is no complex number'],
  ['IMSUM("1+i","1+j")', '#VALUE!', 'i and j are mixed'], ['IMDIV(1,0)', '#NUM!', 'division by zero'], ['DEC2BIN(512)', '#NUM!', '512 does not fit 10 digits of base 2'], ['HEX2DEC("G")', '#NUM!', '"G" is not a number of base 16 with up to 10 digits'],
  ['CONVERT(1,"m","s")', '#N/A', 'm is length, s is time'], ['CONVERT(1,"parrots","m")', '#N/A', '"parrots" is not a unit that CONVERT knows here'], ['VLOOKUP(9,{1,2},3)', '#REF!', 'there is no column 3 in the table'], ['MATCH(9,{1,2;3,4},0)', '#N/A', 'MATCH looks through one row or one column'],
  ['LARGE({1,2},3)', '#NUM!', 'there is no place 3 among 2 numbers'], ['MODE({1,2})', '#N/A', 'no number occurs twice'], ['AVERAGE({"a","b"})', '#DIV/0!', 'no number among the arguments'], ['STDEV.S(5)', '#DIV/0!', 'too few numbers'],
  ['RATE(10,100,1000)', '#NUM!', 'these figures have no solution'], ['IRR({1,2,3})', '#NUM!', 'these figures have no solution'], ['DATE(9999,12,32)', '#NUM!', 'the date lies outside 1900 to 9999'], ['YEAR(-1)', '#NUM!', 'the date lies outside 1900 to 9999'], ['WEEKDAY(5,99)', '#NUM!', 'there is no type 99 of weekday'],
  ['SUBTOTAL(9,{1,2})', '#VALUE!', 'SUBTOTAL takes references'], ['AGGREGATE(99,0,{1})', '#VALUE!', 'there is no function number 99'], ['XLOOKUP(1,{1,2},{1,2,3})', '#VALUE!', 'the results are not as long as the list looked through'], ['XLOOKUP(1,{1,2},{3,4},,7)', '#VALUE!', 'there is no match mode 7'],
];

describe('errors say what is wrong', () => {
  it.each(errors)('%s', (formula, code, message) => {
    expect(errorOf(run(formula))).toEqual({ code, message });
  });

  it('TEXT names a format that cannot be used', () => {
    expect(errorOf(run('TEXT(1,"bad[")'))).toMatchObject({ code: '#VALUE!', message: expect.stringMatching(/^"bad\[" cannot format 1: /) });
    expect(errorOf(run('TEXT(-1,"yyyy")')).code).toBe('#VALUE!');
  });
});

describe('totals of totals', () => {
  const cells = { A1: 1, A2: 2, A3: 3, A4: 4, A5: 7, A6: new CellError('#N/A') };
  const workbook = new SmallWorkbook(cells, { formulas: { A3: 'SUBTOTAL(9,A1:A2)', A5: 'A3+A4' }, hidden: { 1: 'filter', 2: 'hand' } });

  it.each([
    ['SUBTOTAL(9,A1:A5)', 13], // neither the filtered row nor the subtotal
    ['SUBTOTAL(109,A1:A5)', 11], // nor the row hidden by hand
    ['SUBTOTAL(2,A1:A5)', 3],
    ['SUM(A1:A5)', 17],
    ['AGGREGATE(9,0,A1:A5)', 14],
    ['AGGREGATE(9,4,A1:A5)', 17],
    ['AGGREGATE(9,7,A1:A6)', 14],
    ['AGGREGATE(9,3,A1:A6)', 11],
    ['AGGREGATE(14,6,A1:A6,2)', 4],
    ['AGGREGATE(4,6,1/(A1:A5>2)*A1:A5)', 7],
  ])('%s = %d', (formula, result) => {
    expect(run(formula, workbook)).toBe(result);
  });

  it('passes an error on unless asked to leave it out', () => {
    expect(errorOf(run('SUBTOTAL(9,A1:A6)', workbook)).code).toBe('#N/A');
    expect(errorOf(run('AGGREGATE(9,0,A1:A6)', workbook)).code).toBe('#N/A');
  });

  it('knows the formulas of other cells', () => {
    expect(run('FORMULATEXT(A5)', workbook)).toBe('=A3+A4');
    expect(run('ISFORMULA(A4)', workbook)).toBe(false);
  });
});

describe('criteria', () => {
  const workbook = new SmallWorkbook({ A1: 'pump', A2: 'Pump 2', A3: 'p*mp', A4: 5, A5: '5', A6: true, A7: new CellError('#N/A'), A8: '', A10: 7, B1: 1, B2: 2, B3: 4, B4: 8, B5: 16, B6: 32, B7: 64, B8: 128, B9: 256, B10: 512 });

  it.each([
    ['pump', 1], ['pump*', 3], ['p?mp', 5], ['p~*mp', 4], ['5', 24], ['=5', 24], ['>4', 520], ['<>5', 999], ['TRUE', 32], ['#N/A', 64], ['', 384], ['=', 256], ['<>', 767], ['>p', 7], ['<=5', 8],
  ])('%s', (criterion, sum) => {
    expect(run(`SUMIF(A1:A10,"${criterion}",B1:B10)`, workbook)).toBe(sum);
    expect(run(`SUMIFS(B1:B10,A1:A10,"${criterion}")`, workbook)).toBe(sum);
  });

  it('sums a range of the size of the one tested', () => {
    expect(run('SUMIF(A1:A5,"5",B1)', workbook)).toBe(24);
    expect(errorOf(run('SUMIFS(B1:B9,A1:A10,"5")', workbook)).message).toBe('the ranges differ in size');
    expect(errorOf(run('COUNTIFS(A1:A10,1,B1:B9,1)', workbook)).message).toBe('the ranges differ in size');
    expect(run('AVERAGEIFS(B1:B10,A1:A10,"pump*")', workbook)).toBe(1.5);
    expect(run('MINIFS(B1:B10,A1:A10,">4")', workbook)).toBe(8);
    expect(errorOf(run('AVERAGEIF(A1:A10,"none",B1:B10)', workbook)).code).toBe('#DIV/0!');
  });

  it('sums a whole column past the last cell tested', () => {
    expect(run('SUMIF(C:C,"",B:B)', workbook)).toBe(1023);
  });
});

describe('the clock', () => {
  const now = new Date(2025, 0, 15, 18, 0, 0);

  it('is the one that is given', () => {
    expect(run('TODAY()', undefined, { now })).toBe(45672);
    expect(run('NOW()', undefined, { now })).toBe(45672.75);
    expect(run('YEAR(TODAY())', undefined, { now })).toBe(2025);
  });
});
