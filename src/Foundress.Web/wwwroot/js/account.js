// Signing in, invitations, people and devices: a page of its own, so that an invitation opens without the whole program, and
// whoever is refused here still has the book on the device, untouched.
import * as store from './store.js';
import * as passkey from './passkey.js';
import { h, card, field, button, form, day } from './page.js';
import { language, texts } from './texts.js';
import { calendarCard, peopleCards } from './people.js';

const page = document.getElementById('page');
const heading = document.querySelector('h1');
const said = document.getElementById('said');

/** Asks the server; a refusal becomes an error with the server's own words. */
export async function ask(method, path, body) {
  let reply;
  try {
    reply = await fetch('api/v1/' + path, {
      method,
      headers: { 'Accept-Language': language, ...(body === undefined ? {} : { 'Content-Type': 'application/json' }) },
      body: body === undefined ? undefined : JSON.stringify(body),
    });
  } catch {
    throw new Error(texts.noConnection);
  }
  const text = await reply.text();
  let told = null;
  try { told = text ? JSON.parse(text) : null; } catch { /* not the server's own answer: the status is all there is to tell */ }
  if (!reply.ok) throw Object.assign(new Error(told?.detail ?? texts.answered(reply.status)), { status: reply.status });
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
const deviceField = () => field(texts.deviceName, { maxlength: 80, value: /Mobi|Android/.test(navigator.userAgent) ? texts.phone : texts.computer, autocomplete: 'off' }, texts.deviceHint);
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
  say(texts.signedIn(account.name));
}

function signIn(reason) {
  const name = field(texts.name, { autocomplete: 'username', maxlength: 80, required: true });
  const password = field(texts.password, { type: 'password', autocomplete: 'current-password', maxlength: 200, required: true });
  const here = deviceField();
  const withKey = async () => entered(await ask('POST', 'account/passkeys/sign-in', {
    credential: await touch(async () => passkey.get(await ask('POST', 'account/passkeys/challenge', {}))), device: await device(here),
  }));
  show(texts.signIn,
    reason ? h('div', { class: 'notice info' }, h('div', {}, reason)) : null,
    card(texts.onThisDevice, form(texts.signIn, [name, password, here], async () => entered(await ask('POST', 'account/sign-in', {
      name: name.input.value, password: password.input.value, device: await device(here),
    }))), passkey.able() ? button(texts.signInByPasskey, withKey) : null),
    h('p', {}, texts.recordsStay));
}

async function touch(work) {
  try {
    return await work();
  } catch (error) {
    if (error.status) throw error;
    throw new Error(texts.passkeyNotUsed(error.message));
  }
}

async function join(secret, account) {
  const link = await ask('POST', 'account/link', { secret });
  const here = deviceField();
  if (link.kind === 'invitation' && account?.signedIn) {
    show(texts.invitation, card(texts.joinAs(link.operation, link.role), h('p', {}, texts.youAre(account.name)),
      button(texts.join, async () => entered(await ask('POST', 'account/join', { secret, device: { name: await deviceName() } })), 'act')));
    return;
  }
  const invited = link.kind === 'invitation';
  const name = field(texts.yourName, { autocomplete: 'username', maxlength: 80, value: link.name, required: true, readonly: !invited }, invited ? texts.yourNameHint : null);
  const password = field(texts.password, { type: 'password', autocomplete: 'new-password', maxlength: 200, required: true }, texts.passwordHint);
  show(invited ? texts.invitation : texts.newPassword, card(
    invited ? texts.joinAs(link.operation, link.role) : texts.setNewPassword,
    invited ? null : h('p', {}, texts.setSignsOut),
    form(invited ? texts.join : texts.setPassword, [name, password, here], async () => entered(await ask('POST', 'account/join', {
      secret, name: name.input.value, password: password.input.value, device: await device(here),
    })))),
  h('p', {}, texts.worksOnce(day(link.expires))));
}

async function own(account) {
  const [devices, keys] = await Promise.all([ask('GET', 'account/devices'), ask('GET', 'account/passkeys')]);
  const present = field(texts.presentPassword, { type: 'password', autocomplete: 'current-password', maxlength: 200 });
  const next = field(texts.newPassword, { type: 'password', autocomplete: 'new-password', maxlength: 200 }, texts.newPasswordHint);
  const keyName = field(texts.passkeyName, { maxlength: 80, value: texts.myPasskey, autocomplete: 'off' });
  const open = await store.metaGet('operation') ?? 'home';
  const parts = [
    card(texts.you, h('dl', { class: 'facts' }, h('dt', {}, texts.name), h('dd', {}, account.name), account.administrator ? [h('dt', {}, texts.server), h('dd', {}, texts.administrator)] : []),
      h('ul', { class: 'rows' }, account.operations.map(one => h('li', {}, h('div', {}, texts.bookAs(one.operation, one.role)),
        one.operation === open ? h('strong', {}, texts.openHere) : button(texts.openBook, async () => {
          await store.metaSet('operation', one.operation);
          store.tell('*');
          location.href = './';
        })))),
      button(texts.signOut, async () => {
        if (!confirm(texts.signOutSure)) return;
        await ask('POST', 'account/sign-out', {});
        await begin();
        say(texts.signedOut);
      })),
    card(texts.yourDevices, h('ul', { class: 'rows' }, devices.map(one => deviceRow(one, `account/devices/${one.id}`)))),
    passkey.able() ? card(texts.yourPasskeys, h('p', {}, texts.whatPasskeysAre),
      h('ul', { class: 'rows' }, keys.map(one => h('li', {}, h('div', {}, texts.passkeySince(one.label, day(one.made))), button(texts.remove, async () => {
        await ask('DELETE', `account/passkeys/${one.id}`);
        await begin();
      })))),
      form(texts.addPasskey, [keyName], async () => {
        await ask('POST', 'account/passkeys', { credential: await touch(async () => passkey.create(await ask('POST', 'account/passkeys/options', {}))), label: keyName.input.value });
        await begin();
        say(texts.passkeyAdded);
      })) : null,
    await calendarCard(begin),
    card(texts.yourPassword, form(texts.changePassword, [present, next], async () => {
      await ask('POST', 'account/password', { present: present.input.value, new: next.input.value });
      await begin();
      say(texts.passwordChanged);
    })),
  ];
  for (const one of account.operations.filter(one => one.role === 'keeper')) parts.push(...await peopleCards(one.operation, begin));
  show(texts.heading, h('div', { class: 'columns' }, parts.filter(Boolean)));
}

export const deviceRow = (one, path) => h('li', {},
  h('div', {}, one.this ? texts.thisOne(one.label) : one.label, h('br'), h('span', { class: 'hint' }, texts.lastSeen(day(one.seen)))),
  button(texts.takeOff, async () => {
    if (!confirm(texts.takeOffSure(one.label))) return;
    await ask('DELETE', path);
    await begin();
  }));

async function begin() {
  say(null);
  const about = await ask('GET', 'about');
  if (!about.accounts) {
    show(texts.heading, h('p', {}, texts.noAccounts));
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
  else signIn(account ? texts.signInToChange(account.name) : null);
}

function run() {
  begin().catch(error => show(texts.heading,
    h('div', { class: 'notice error', role: 'alert' }, h('div', {}, error.message)),
    button(texts.tryAgain, async () => run()),
    location.hash ? button(texts.signInInstead, async () => { history.replaceState(null, '', location.pathname); run(); }) : null));
}

addEventListener('hashchange', run);
run();
