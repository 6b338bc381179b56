// Signing in, invitations, people and devices: a page of its own, so that an invitation opens without the whole program, and
// whoever is refused here still has the book on the device, untouched.
import * as store from './store.js';
import * as passkey from './passkey.js';
import { h, card, field, button, form, day } from './page.js';
import { calendarCard, peopleCards } from './people.js';

const page = document.getElementById('page');
const heading = document.querySelector('h1');
const said = document.getElementById('said');
const roles = { reader: 'reader', helper: 'helper', keeper: 'keeper' };

/** Asks the server; a refusal becomes an error with the server's own words. */
export async function ask(method, path, body) {
  let reply;
  try {
    reply = await fetch('api/v1/' + path, {
      method, headers: body === undefined ? {} : { 'Content-Type': 'application/json' }, body: body === undefined ? undefined : JSON.stringify(body),
    });
  } catch {
    throw new Error('No connection to the server. Everything recorded stays on this device.');
  }
  const text = await reply.text();
  let told = null;
  try { told = text ? JSON.parse(text) : null; } catch { /* not the server's own answer: the status is all there is to tell */ }
  if (!reply.ok) throw Object.assign(new Error(told?.detail ?? `The server answered ${reply.status}.`), { status: reply.status });
  return told;
}

export function say(words) {
  said.replaceChildren(words ? h('div', { class: 'notice info' }, h('div', {}, words)) : '');
}

function show(title, ...parts) {
  heading.textContent = title;
  document.title = title + ' · Foundress';
  page.replaceChildren(...parts.flat().filter(Boolean));
  heading.focus();
}

// The name this device has in its records; made here when the program was never opened on it.
const deviceName = () => store.metaFirst('device', Array.from(crypto.getRandomValues(new Uint8Array(6)), b => b.toString(16).padStart(2, '0')).join(''));
const deviceField = () => field('Name of this device', { maxlength: 80, value: /Mobi|Android/.test(navigator.userAgent) ? 'Phone' : 'Computer', autocomplete: 'off' }, 'You find the device by this name in the list, should you lose it.');
const device = async box => ({ name: await deviceName(), label: box.input.value });

async function entered(account) {
  // Records are written in the name that was signed in with, and the open book is one the person belongs to.
  await store.metaSet('author', account.name);
  const books = account.operations.map(one => one.operation);
  const open = await store.metaGet('operation') ?? 'home';
  if (open !== 'demo' && books.length > 0 && !books.includes(open)) await store.metaSet('operation', books[0]);
  store.tell('*');
  history.replaceState(null, '', location.pathname);
  await begin();
  say(`Signed in as ${account.name}. Records on this device are copied to the server from now on.`);
}

function signIn(reason) {
  const name = field('Name', { autocomplete: 'username', maxlength: 80, required: true });
  const password = field('Password', { type: 'password', autocomplete: 'current-password', maxlength: 200, required: true });
  const here = deviceField();
  const withKey = async () => entered(await ask('POST', 'account/passkeys/sign-in', {
    credential: await touch(async () => passkey.get(await ask('POST', 'account/passkeys/challenge', {}))), device: await device(here),
  }));
  show('Sign in',
    reason ? h('div', { class: 'notice info' }, h('div', {}, reason)) : null,
    card('On this device', form('Sign in', [name, password, here], async () => entered(await ask('POST', 'account/sign-in', {
      name: name.input.value, password: password.input.value, device: await device(here),
    }))), passkey.able() ? button('Sign in with a passkey', withKey) : null),
    h('p', {}, 'Nothing here touches your records: everything recorded on this device stays on it, signed in or not.'));
}

async function touch(work) {
  try {
    return await work();
  } catch (error) {
    if (error.status) throw error;
    throw new Error(`The passkey was not used: ${error.message}`);
  }
}

async function join(secret, account) {
  const link = await ask('POST', 'account/link', { secret });
  const here = deviceField();
  if (link.kind === 'invitation' && account?.signedIn) {
    show('Invitation', card(`Join “${link.operation}” as ${roles[link.role]}`, h('p', {}, `You are signed in as ${account.name}.`),
      button('Join', async () => entered(await ask('POST', 'account/join', { secret, device: { name: await deviceName() } })), 'act')));
    return;
  }
  const invited = link.kind === 'invitation';
  const name = field('Your name', { autocomplete: 'username', maxlength: 80, value: link.name, required: true, readonly: !invited }, invited ? 'You sign in with it, and every record you make carries it.' : null);
  const password = field('Password', { type: 'password', autocomplete: 'new-password', maxlength: 200, required: true }, 'At least 12 characters. Four words in a row are easy to keep in mind.');
  show(invited ? 'Invitation' : 'New password', card(
    invited ? `Join “${link.operation}” as ${roles[link.role]}` : 'Set a new password',
    invited ? null : h('p', {}, 'This signs out your other devices and removes your passkeys. Sign in again on each device and add your passkeys again.'),
    form(invited ? 'Join' : 'Set the password', [name, password, here], async () => entered(await ask('POST', 'account/join', {
      secret, name: name.input.value, password: password.input.value, device: await device(here),
    })))),
  h('p', {}, `The link works once, until ${day(link.expires)}.`));
}

async function own(account) {
  const [devices, keys] = await Promise.all([ask('GET', 'account/devices'), ask('GET', 'account/passkeys')]);
  const present = field('Current password', { type: 'password', autocomplete: 'current-password', maxlength: 200 });
  const next = field('New password', { type: 'password', autocomplete: 'new-password', maxlength: 200 }, 'At least 12 characters.');
  const keyName = field('Name of the passkey', { maxlength: 80, value: 'My passkey', autocomplete: 'off' });
  const open = await store.metaGet('operation') ?? 'home';
  const parts = [
    card('You', h('dl', { class: 'facts' }, h('dt', {}, 'Name'), h('dd', {}, account.name), account.administrator ? [h('dt', {}, 'Server'), h('dd', {}, 'administrator')] : []),
      h('ul', { class: 'rows' }, account.operations.map(one => h('li', {}, h('div', {}, `${one.operation}: ${roles[one.role]}`),
        one.operation === open ? h('strong', {}, 'open on this device') : button('Open this book', async () => {
          await store.metaSet('operation', one.operation);
          store.tell('*');
          location.href = './';
        })))),
      button('Sign out', async () => {
        if (!confirm('Sign out? Records stay on this device, but they are not copied until you sign in again.')) return;
        await ask('POST', 'account/sign-out', {});
        await begin();
        say('Signed out. Everything recorded stays on this device.');
      })),
    card('Your devices', h('ul', { class: 'rows' }, devices.map(one => deviceRow(one, `account/devices/${one.id}`)))),
    passkey.able() ? card('Your passkeys', h('p', {}, 'A passkey signs you in by fingerprint, face or the code of the device, without a password.'),
      h('ul', { class: 'rows' }, keys.map(one => h('li', {}, h('div', {}, `${one.label}, since ${day(one.made)}`), button('Remove', async () => {
        await ask('DELETE', `account/passkeys/${one.id}`);
        await begin();
      })))),
      form('Add a passkey', [keyName], async () => {
        await ask('POST', 'account/passkeys', { credential: await touch(async () => passkey.create(await ask('POST', 'account/passkeys/options', {}))), label: keyName.input.value });
        await begin();
        say('The passkey was added.');
      })) : null,
    await calendarCard(begin),
    card('Your password', form('Change the password', [present, next], async () => {
      await ask('POST', 'account/password', { present: present.input.value, new: next.input.value });
      await begin();
      say('The password was changed. Other browsers are signed out; devices go on copying until they are taken off.');
    })),
  ];
  for (const one of account.operations.filter(one => one.role === 'keeper')) parts.push(...await peopleCards(one.operation, begin));
  show('People and devices', h('div', { class: 'columns' }, parts.filter(Boolean)));
}

export const deviceRow = (one, path) => h('li', {},
  h('div', {}, `${one.label}${one.this ? ' (this one)' : ''}`, h('br'), h('span', { class: 'hint' }, `last seen ${day(one.seen)}`)),
  button('Take off', async () => {
    if (!confirm(`Take “${one.label}” off? It no longer exchanges records with the server. What is on it stays on it.`)) return;
    await ask('DELETE', path);
    await begin();
  }));

async function begin() {
  say(null);
  const about = await ask('GET', 'about');
  if (!about.accounts) {
    show('People and devices', h('p', {}, 'This server has no accounts. It can be opened on this computer only, and whoever uses this computer can do everything. How to share a book is in docs/club-server.md.'));
    return;
  }
  let account = null;
  try {
    account = await ask('GET', 'account');
  } catch (error) {
    if (error.status !== 401) throw error;
  }
  const secret = location.hash.slice(1);
  if (secret) await join(secret, account);
  else if (account?.signedIn) await own(account);
  else signIn(account ? `This device copies the records of ${account.name}. To change people and devices, sign in again.` : null);
}

function run() {
  begin().catch(error => show('People and devices',
    h('div', { class: 'notice error', role: 'alert' }, h('div', {}, error.message)),
    button('Try again', async () => run()),
    location.hash ? button('Sign in instead', async () => { history.replaceState(null, '', location.pathname); run(); }) : null));
}

addEventListener('hashchange', run);
run();
