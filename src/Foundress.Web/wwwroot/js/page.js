// Small parts that pages outside the app are built of. Text goes in as text, never as markup.
import { culture } from './texts.js';

let ids = 0;

/** An element with attributes, listeners (onclick and the like) and children. */
export function h(tag, attributes, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (name.startsWith('on')) element.addEventListener(name.slice(2), value);
    else if (value === true) element.setAttribute(name, '');
    else if (value !== null && value !== undefined && value !== false) element.setAttribute(name, value);
  }
  element.append(...children.flat().filter(child => child !== null && child !== undefined && child !== false));
  return element;
}

export function card(heading, ...children) {
  const id = `h${++ids}`;
  return h('section', { class: 'card', 'aria-labelledby': id }, h('div', { class: 'cardhead' }, h('h2', { id }, heading)), children);
}

/** A labelled input; its element is `.input`. */
export function field(label, attributes, hint) {
  const id = `f${++ids}`;
  const input = h('input', { id, type: 'text', ...attributes, 'aria-describedby': hint ? id + 'h' : null });
  const box = h('div', { class: 'field' }, h('label', { for: id }, label), hint ? h('p', { class: 'hint', id: id + 'h' }, hint) : null, input);
  return Object.assign(box, { input });
}

export function select(label, choices, chosen) {
  const id = `s${++ids}`;
  const input = h('select', { id }, choices.map(([value, words]) => h('option', { value, selected: value === chosen }, words)));
  return Object.assign(h('div', { class: 'field' }, h('label', { for: id }, label), input), { input });
}

/** A button that waits for its work and says what went wrong beside it. */
export function button(words, work, kind = 'act second') {
  const fault = h('p', { class: 'fault', role: 'alert', hidden: true });
  const press = h('button', { type: 'button', class: kind, onclick: () => attempt(press, fault, work) }, words);
  return h('div', { class: 'one' }, press, fault);
}

/** A form that is sent by its one button, keeps what was typed when it fails, and says why. */
export function form(words, fields, work) {
  const fault = h('p', { class: 'fault', role: 'alert', hidden: true });
  const press = h('button', { type: 'submit', class: 'act' }, words);
  return h('form', {
    novalidate: true,
    onsubmit: event => { event.preventDefault(); attempt(press, fault, work); },
  }, fields, fault, h('div', { class: 'acts' }, press));
}

async function attempt(press, fault, work) {
  press.disabled = true;
  fault.hidden = true;
  try {
    await work();
  } catch (error) {
    fault.textContent = error.message;
    fault.hidden = false;
  } finally {
    press.disabled = false;
  }
}

const dayParts = new Intl.DateTimeFormat(culture, { day: 'numeric', month: 'short', year: 'numeric' });

/** A moment as the app's own pages write it: in English the day before the month, on whichever side of an ocean. */
export function day(time) {
  const at = new Date(time);
  const part = Object.fromEntries(dayParts.formatToParts(at).map(one => [one.type, one.value]));
  const on = culture.startsWith('en') ? `${part.day} ${part.month} ${part.year}` : dayParts.format(at);
  return `${on}, ${at.toLocaleTimeString(culture, { timeStyle: 'short' })}`;
}
