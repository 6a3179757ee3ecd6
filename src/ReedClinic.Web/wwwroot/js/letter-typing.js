// Keeps what is being typed in a letter in this tab until the studio has it: going elsewhere, reloading, or a lost session loses nothing.
// Each part is kept with the mark of the text it began from. It is let go of when the studio shows the same words, and never put over
// words that somebody else wrote meanwhile: those are shown beside it, and so is what was typed in a field that is gone. It belongs to
// whoever typed it: somebody else who signs in in the same tab is shown nothing of it.
const form = document.querySelector('[data-keeps-typing]');
if (form) {
  const name = form.dataset.keepsTyping;
  const fields = [...form.querySelectorAll('textarea, input[type="text"]')].filter(field => /^((Block|Answer|Reason)\.|WhatChanged$)/.test(field.name));
  const plain = text => text.replace(/\s+/g, ' ').trim();
  const shown = field => form.elements['Shown.' + field.name.replace(/^Block\./, '')]?.value ?? '';
  const note = document.getElementById('letter-typed');
  const others = document.getElementById('letter-typed-others');
  const read = () => { try { return JSON.parse(sessionStorage.getItem(name)) ?? {}; } catch { return {}; } };
  const write = typed => {
    try {
      if (Object.keys(typed).length) sessionStorage.setItem(name, JSON.stringify(typed)); else sessionStorage.removeItem(name);
    } catch { /* A browser that keeps nothing: then only the button keeps it. */ }
  };

  const typed = read();
  const left = {};
  const beside = text => {
    others.append(Object.assign(document.createElement('p'), { className: 'letter-fresh-text', textContent: text }));
    others.hidden = note.hidden = false;
  };
  for (const field of fields) {
    const was = typed[field.name];
    // What the studio sent is the default: a browser may have put back by itself what was typed before a reload.
    if (!was || plain(was.text) === plain(field.defaultValue)) continue;
    // What was typed before its part was written anew was kept first, as a version.
    if (field.name === `Block.${form.dataset.rewritten}` && was.from !== shown(field)) continue;
    left[field.name] = was;
    delete was.posted; // It wasn't kept.
    if (was.from === shown(field)) {
      field.value = was.text;
      field.closest('details')?.setAttribute('open', '');
      field.classList.add('typed-before');
      document.getElementById('letter-typed-back').hidden = note.hidden = false;
    } else {
      beside(was.text);
    }
  }

  for (const name of Object.keys(typed).filter(name => !fields.some(field => field.name === name))) {
    // What came with a form that the studio answered is kept, or shown by the studio itself.
    if (typed[name].posted && 'taken' in form.dataset) continue;
    left[name] = typed[name];
    // The page of the letter as it will be read has only some of the fields.
    if (form.dataset.typing !== 'some') beside(typed[name].text);
  }

  write(left);
  // What stands there is without those words: it says so, and isn't sent before they are kept or let go of.
  const away = document.getElementById('letter-typed-away');
  const isAway = () => Boolean(away) && Object.keys(read()).some(name => !fields.some(field => field.name === name));
  const tellAway = () => { away.hidden = !isAway(); document.getElementById('letter-as-read').hidden = isAway(); };
  if (away) {
    // Whoever comes back to this page by the browser's own way hasn't pressed anything.
    if ('taken' in form.dataset) history.replaceState(history.state, '', location.pathname);
    tellAway();
    document.getElementById('letter-typed-away-drop').addEventListener('click', () => {
      write(Object.fromEntries(Object.entries(read()).filter(([name]) => fields.some(field => field.name === name))));
      tellAway();
    });
    form.addEventListener('submit', event => {
      if (!isAway()) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      tellAway();
      away.focus();
      away.scrollIntoView({ block: 'center' });
    });
  }

  form.addEventListener('input', event => {
    const field = event.target;
    if (!fields.includes(field)) return;
    const now = read();
    if (plain(field.value) === plain(field.defaultValue)) delete now[field.name]; else now[field.name] = { text: field.value, from: shown(field) };
    write(now);
  });
  form.addEventListener('submit', () => {
    const now = read();
    for (const field of fields) if (now[field.name]) now[field.name].posted = true;
    write(now);
  });
  document.getElementById('letter-typed-drop').addEventListener('click', () => {
    for (const field of fields) {
      if (field.classList.contains('typed-before')) field.value = field.defaultValue;
      field.classList.remove('typed-before');
    }

    // What belongs to fields of another page isn't shown here, so it isn't let go of here.
    write(Object.fromEntries(Object.entries(read()).filter(([name]) => form.dataset.typing === 'some' && !fields.some(field => field.name === name))));
    note.hidden = true;
  });
  form.dataset.typingReady = 'yes';
}
