// What a keeper sees of an operation: its people, invitations and sign-ins.
import { ask, say, deviceRow } from './account.js';
import { h, card, field, select, button, form, day } from './page.js';

const roles = [['reader', 'Reader: can read everything'], ['helper', 'Helper: can also record'], ['keeper', 'Keeper: can also invite people']];
const results = {
  let: 'signed in', wrong: 'refused', unknown: 'nobody of that name', waiting: 'refused, too many tries', made: 'calendar address made', off: 'calendar address taken off',
};

/** One's own secret address for calendar programs. */
export async function calendarCard(again) {
  const { link } = await ask('GET', 'account/calendar');
  const made = h('div', { role: 'status' });
  const make = async () => {
    if (link && !confirm('Make new addresses? Programs that read the present ones get nothing any more.')) return;
    const reply = await ask('POST', 'account/calendar', {});
    made.replaceChildren(h('div', { class: 'notice info' }, h('div', {},
      h('p', {}, 'Give these to your calendar program as calendars to subscribe to, and to nobody else. They are not shown again: copy them now.'),
      reply.calendars.map(one => [h('p', {}, one.operation), h('p', { class: 'link' }, one.address),
        button(`Copy the address of “${one.operation}”`, async () => { await navigator.clipboard.writeText(one.address); say('The address was copied.'); })]).flat(),
      button('Done', again))));
  };
  return card('Your calendar',
    h('p', {}, 'A calendar program cannot sign in. With a secret address it reads what is due in the books you belong to, and nothing else.'),
    link ? h('p', {}, calendarWords(link)) : null,
    button(link ? 'Make new addresses' : 'Make the addresses', make),
    link ? button('Take the address off', async () => {
      await ask('DELETE', 'account/calendar');
      await again();
      say('Calendar programs get nothing any more.');
    }) : null,
    made);
}

const calendarWords = link => `Calendar address since ${day(link.made)}, ${link.seen ? `last read ${day(link.seen)}` : 'not read yet'}.`;

/** The cards of one operation; again is called when something was changed. */
export async function peopleCards(operation, again) {
  const path = `operations/${encodeURIComponent(operation)}`;
  const [people, signIns] = await Promise.all([ask('GET', path + '/people'), ask('GET', path + '/sign-ins')]);
  return [
    card(`People of “${operation}”`, h('ul', { class: 'rows' }, people.people.map(one => personRow(one, path, operation, again)))),
    invitations(people.invitations, path, operation, again),
    card(`Sign-ins of “${operation}”`, h('div', { class: 'tablewrap', role: 'region', tabindex: 0, 'aria-label': 'Sign-ins' },
      h('table', {},
        h('thead', {}, h('tr', {}, ['When', 'Who', 'How', 'Result', 'Network'].map(words => h('th', { scope: 'col' }, words)))),
        h('tbody', {}, signIns.map(one => h('tr', {}, [day(one.at), one.name ?? '', one.way, results[one.result], one.network].map(words => h('td', {}, words)))))))),
  ];
}

function personRow(one, path, operation, again) {
  const role = h('select', { 'aria-label': `Role of ${one.name}` }, roles.map(([value, words]) => h('option', { value, selected: value === one.role }, words)));
  return h('li', {},
    h('div', {}, h('strong', {}, one.name), h('br'), h('span', { class: 'hint' }, `since ${day(one.since)}`)),
    role,
    button('Change the role', async () => {
      await ask('PUT', `${path}/people/${one.id}`, { role: role.value });
      await again();
      say(`${one.name} is ${role.value} now.`);
    }),
    button('Remove', async () => {
      if (!confirm(`Remove ${one.name} from “${operation}”? What they recorded stays in the book.`)) return;
      await ask('DELETE', `${path}/people/${one.id}`);
      await again();
      say(`${one.name} was removed.`);
    }),
    h('ul', { class: 'rows', 'aria-label': `Devices of ${one.name}` }, one.devices.map(device => deviceRow(device, `${path}/people/${one.id}/devices/${device.id}`))),
    one.calendar ? h('div', {}, h('span', { class: 'hint' }, calendarWords(one.calendar)), button('Take the calendar address off', async () => {
      await ask('DELETE', `${path}/people/${one.id}/calendar`);
      await again();
      say(`Calendar programs of ${one.name} get nothing any more.`);
    })) : null);
}

function invitations(open, path, operation, again) {
  const name = field('Who is it for?', { maxlength: 80, autocomplete: 'off' }, 'They can still change it.');
  const role = select('What may they do?', roles, 'helper');
  const made = h('div', { role: 'status' });
  return card(`Invite somebody to “${operation}”`,
    form('Make a link', [name, role], async () => {
      const link = await ask('POST', path + '/invitations', { role: role.input.value, forName: name.input.value || null });
      made.replaceChildren(h('div', { class: 'notice info' }, h('div', {},
        h('p', {}, `Send this link only to the person it is for. It works once, until ${day(link.expires)}. It is not shown again: copy it now.`),
        h('p', { class: 'link' }, link.link),
        button('Copy the link', async () => { await navigator.clipboard.writeText(link.link); say('The link was copied.'); }))));
    }),
    made,
    open.length ? h('ul', { class: 'rows', 'aria-label': 'Open invitations' }, open.map(one => h('li', {},
      h('div', {}, `${one.forName || 'No name'}, ${one.role}, until ${day(one.expires)}`),
      button('Take back', async () => {
        await ask('DELETE', `${path}/invitations/${one.id}`);
        await again();
      })))) : null);
}
