import { format } from 'node:util';

/** The part of the test frame that tests of the engineering use: describe, test and their `each`. Tests are gathered on loading and run afterwards. */
export class Frame {
  gathered = [];
  #within = [];

  constructor() {
    this.test = Object.assign((name, body) => this.#add(name, body), { each: this.#each((name, body) => this.#add(name, body)) });
    const describe = (name, body) => this.#describe(name, body);
    this.describe = Object.assign(describe, { each: this.#each(describe) });
  }

  #describe(name, body) {
    this.#within.push(name);
    body();
    this.#within.pop();
  }

  #add(name, body) {
    if (body.length > 0) throw new Error(`test "${name}" takes a callback, which is not known here`);
    const plain = [globalThis.currentTestFile, ...this.#within, name].join(' › ');
    const alike = this.gathered.filter((other) => other.plain === plain).length;
    this.gathered.push({ plain, id: alike === 0 ? plain : `${plain} (${alike + 1})`, fileName: globalThis.currentTestFile, body });
  }

  #each(make) {
    return (rows) => (name, body) => rows.forEach((row, place) => {
      const list = Array.isArray(row) ? row : [row];
      make(`${format(name, ...list.slice(0, (name.match(/%[a-z]/g) ?? []).length))} [${place}]`, () => body(...list));
    });
  }
}
