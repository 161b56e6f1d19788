import { family, worksheetFunction } from './kernel/declaration';
import { netArrangements, netContribution, netMeshed } from './network-meshed';
import { netProfile, netRadial } from './network-radial';
import { checkMesh, checkRadial } from './network-tables/check-tables';
import { anyNetworkTable, optionalSources } from './network-tables/tables';

const netCheck = worksheetFunction({
  name: 'NET_CHECK',
  summary: 'Looks over a network table and says what is wrong with it: the first finding, and how many more.',
  tasks: ['check the network table', 'missing board, loop in the tree', 'typing errors in the table'],
  formula: '',
  parameters: { table: anyNetworkTable('table of boards, or of branches where sources are given'), sources: optionalSources() },
  result: 'text',
  basis: [{ source: 'own rules' }],
  caution: 'It reads the table; whether the impedances are right it cannot know.',
  examples: [
    '=JW.NET_CHECK({"MSB","source","0.2+0.4i";"DB1","MSB","6.2+2.4i";"DB2","DB9","12+3i"})',
    '=JW.NET_CHECK({"N","S","0.9+1.1i";"N","N","1+1i";"X","Y","1+1i"},{"N","1.5+8.2i"})',
  ],
  compute: ({ table, sources }) => (sources ? checkMesh({ ...table, name: 'branches' }, sources) : checkRadial(table)),
});

export const network = family('network', [netRadial, netMeshed, netContribution, netArrangements, netCheck, netProfile]);
