// npm run certs: a certificate for https://localhost that this machine trusts. Meant for the machine that runs Excel.
import { ensureInstalled } from './lib/install.mjs';

const DAYS = 365;

await ensureInstalled();
console.log('Making a certificate for https://localhost and asking this machine to trust its issuer.');
console.log('The system may ask for your consent or password. Only this machine is changed.\n');
try {
  const { default: certs } = await import('office-addin-dev-certs');
  await certs.ensureCertificatesAreInstalled(DAYS, ['localhost', '127.0.0.1']);
  console.log('\nNow run `npm start`. To take the trust away again: npx office-addin-dev-certs uninstall');
} catch (error) {
  console.error(`The certificate was not installed: ${(error instanceof Error ? error.message : String(error)).trim().split('\n')[0]}`);
  console.error('On Linux and macOS this needs sudo or the keychain; on Windows, consent to the dialog. The workbench needs no certificate.');
  process.exitCode = 1;
}
