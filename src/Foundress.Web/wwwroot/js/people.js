// What a keeper sees of an operation: its people, invitations and sign-ins.
import { ask, say, deviceRow } from './account.js';
import { h, card, field, select, button, form, day } from './page.js';
import { texts } from './texts.js';

const roles = Object.entries(texts.mayDo);

/** One's own secret address for calendar programs. */
export async function calendarCard(again) {
  const { link } = await ask('GET', 'account/calendar');
  const made = h('div', { role: 'status' });
  const make = async () => {
    if (link && !confirm(texts.makeNewSure)) return;
    const reply = await ask('POST', 'account/calendar', {});
    made.replaceChildren(h('div', { class: 'notice info' }, h('div', {},
      h('p', {}, texts.giveToCalendar),
      reply.calendars.map(one => [h('p', {}, one.operation), h('p', { class: 'link' }, one.address),
        button(texts.copyAddress(one.operation), async () => { await navigator.clipboard.writeText(one.address); say(texts.addressCopied); })]).flat(),
      button(texts.done, again))));
  };
  return card(texts.yourCalendar,
    h('p', {}, texts.whatCalendarsDo),
    link ? h('p', {}, calendarWords(link)) : null,
    button(link ? texts.makeNewAddresses : texts.makeAddresses, make),
    link ? button(texts.takeAddressOff, async () => {
      await ask('DELETE', 'account/calendar');
      await again();
      say(texts.calendarsGetNothing);
    }) : null,
    made);
}

const calendarWords = link => link.seen ? texts.calendarRead(day(link.made), day(link.seen)) : texts.calendarUnread(day(link.made));

/** The cards of one operation; again is called when something was changed. */
export async function peopleCards(operation, again) {
  const path = `operations/${encodeURIComponent(operation)}`;
  const [people, signIns] = await Promise.all([ask('GET', path + '/people'), ask('GET', path + '/sign-ins')]);
  return [
    card(texts.peopleOf(operation), h('ul', { class: 'rows' }, people.people.map(one => personRow(one, path, operation, again)))),
    invitations(people.invitations, path, operation, again),
    card(texts.signInsOf(operation), h('ul', { class: 'rows' }, signIns.map(one => h('li', {}, h('div', {},
      h('strong', {}, one.name ?? texts.nobody), `, ${texts.ways[one.way]}: ${texts.results[one.result]}`,
      h('br'), h('span', { class: 'hint' }, `${day(one.at)} · ${one.network}`)))))),
  ];
}

function personRow(one, path, operation, again) {
  const role = h('select', { 'aria-label': texts.roleOf(one.name) }, roles.map(([value, words]) => h('option', { value, selected: value === one.role }, words)));
  return h('li', {},
    h('div', {}, h('strong', {}, one.name), h('br'), h('span', { class: 'hint' }, texts.since(day(one.since)))),
    role,
    button(texts.changeRole, async () => {
      const chosen = role.value;
      await ask('PUT', `${path}/people/${one.id}`, { role: chosen });
      await again();
      say(texts.roleChanged(one.name, chosen));
    }),
    button(texts.remove, async () => {
      if (!confirm(texts.removeSure(one.name, operation))) return;
      await ask('DELETE', `${path}/people/${one.id}`);
      await again();
      say(texts.removed(one.name));
    }),
    h('ul', { class: 'rows', 'aria-label': texts.devicesOf(one.name) }, one.devices.map(device => deviceRow(device, `${path}/people/${one.id}/devices/${device.id}`))),
    one.calendar ? h('div', {}, h('span', { class: 'hint' }, calendarWords(one.calendar)), button(texts.takeCalendarOff, async () => {
      await ask('DELETE', `${path}/people/${one.id}/calendar`);
      await again();
      say(texts.calendarsOfGetNothing(one.name));
    })) : null);
}

function invitations(open, path, operation, again) {
  const name = field(texts.whoFor, { maxlength: 80, autocomplete: 'off' }, texts.whoForHint);
  const role = select(texts.whatMayThey, roles, 'helper');
  const made = h('div', { role: 'status' });
  return card(texts.invite(operation),
    form(texts.makeLink, [name, role], async () => {
      const link = await ask('POST', path + '/invitations', { role: role.input.value, forName: name.input.value || null });
      made.replaceChildren(h('div', { class: 'notice info' }, h('div', {},
        h('p', {}, texts.sendLink(day(link.expires))),
        h('p', { class: 'link' }, link.link),
        button(texts.copyLink, async () => { await navigator.clipboard.writeText(link.link); say(texts.linkCopied); }))));
    }),
    made,
    open.length ? h('ul', { class: 'rows', 'aria-label': texts.openInvitations }, open.map(one => h('li', {},
      h('div', {}, texts.invitationOf(one.forName, one.role, day(one.expires))),
      button(texts.takeBack, async () => {
        await ask('DELETE', `${path}/invitations/${one.id}`);
        await again();
      })))) : null);
}
