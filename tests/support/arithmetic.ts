/**
 * Reads the formula of a step as arithmetic: figures, names of the inputs, + − · /, powers, roots, logarithms, e, π, min and max.
 * Whatever says more ("table 3", "k1·V⁶ + … + k7") is no arithmetic: undefined.
 */
export function arithmetic(formula: string, inputs: Readonly<Record<string, number>>): number | undefined {
  // A remark may follow: ", method B".
  const reader = new Reader(formula.replace(/, [^()\d][^()]*$/, ''), inputs);
  try {
    const value = reader.sum();
    return reader.atEnd() ? value : undefined;
  } catch (error) {
    if (error instanceof NoArithmetic) return undefined;
    throw error;
  }
}

class NoArithmetic extends Error {}

const POWERS: Readonly<Record<string, number>> = { '²': 2, '³': 3, '^⅓': 1 / 3 };
const FUNCTIONS: Readonly<Record<string, (...values: number[]) => number>> = { '√': Math.sqrt, ln: Math.log, lg: Math.log10, min: Math.min, max: Math.max };
const FIGURE = /^\d+(\.\d+)?(E[+-]\d+)?/;

class Reader {
  private readonly names: readonly string[];

  constructor(private text: string, private readonly inputs: Readonly<Record<string, number>>) {
    this.names = Object.keys(inputs).sort((a, b) => b.length - a.length);
  }

  atEnd(): boolean {
    return this.text.trim() === '';
  }

  sum(): number {
    let value = this.take('−') ? -this.product() : this.product();
    for (;;) {
      if (this.take('+')) value += this.product();
      else if (this.take('−')) value -= this.product();
      else return value;
    }
  }

  private product(): number {
    let value = this.power();
    for (;;) {
      if (this.take('·')) value *= this.power();
      else if (this.take('/')) value /= this.power();
      else if (this.text.startsWith('π')) value *= this.power();
      else return value;
    }
  }

  private power(): number {
    const base = this.operand();
    const mark = Object.keys(POWERS).find((power) => this.take(power));
    if (mark !== undefined) return base ** POWERS[mark]!;
    return this.take('^') ? base ** (this.take('−') ? -this.operand() : this.operand()) : base;
  }

  private operand(): number {
    this.text = this.text.trimStart();
    const name = this.names.find((one) => this.take(one));
    if (name !== undefined) return this.inputs[name]!;
    const digits = FIGURE.exec(this.text)?.[0];
    if (digits !== undefined && this.take(digits)) return Number(digits);
    if (this.take('π')) return Math.PI;
    if (this.take('(')) return this.closed()[0]!;
    const of = Object.keys(FUNCTIONS).find((one) => this.take(one));
    if (of !== undefined) return FUNCTIONS[of]!(...(this.take('(') ? this.closed() : [this.operand()]));
    if (this.text.startsWith('e^') && this.take('e')) return Math.E;
    throw new NoArithmetic();
  }

  /** What stands up to the closing bracket, the opening one being passed. */
  private closed(): number[] {
    const values = [this.sum()];
    while (this.take(',')) values.push(this.sum());
    if (!this.take(')')) throw new NoArithmetic();
    return values;
  }

  private take(mark: string): boolean {
    const text = this.text.trimStart();
    if (!text.startsWith(mark)) return false;
    this.text = text.slice(mark.length);
    return true;
  }
}
