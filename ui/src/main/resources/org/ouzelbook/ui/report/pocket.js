// The notebook for a phone. It asks no network for anything; what is tapped is kept on the phone until it is handed out.
(async () => {
  const water = JSON.parse(document.getElementById('water').textContent);
  const $ = id => document.getElementById(id);
  const say = (key, ...facts) => water.texts[key].replace(/\{(\d)\}/g, (_, i) => facts[i]);

  // ---- Keeping: the phone's database, or else its smaller store, or else nothing but this page's memory. ----

  const KEY = 'ouzelbook-pocket-' + water.key;

  function opened() {
    return new Promise((resolve, reject) => {
      const request = indexedDB.open(KEY, 1);
      request.onupgradeneeded = () => request.result.createObjectStore('entries', { keyPath: 'id' });
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
      request.onblocked = () => reject(new Error('blocked'));
    });
  }

  function database(db) {
    const run = (mode, work) => new Promise((resolve, reject) => {
      // Strict: done only when it is on the phone's disk, so that an empty battery takes nothing.
      const step = db.transaction('entries', mode, { durability: 'strict' });
      const request = work(step.objectStore('entries'));
      step.oncomplete = () => resolve(request.result);
      step.onerror = step.onabort = () => reject(step.error || request.error);
    });
    return {
      all: () => run('readonly', entries => entries.getAll()),
      put: entry => run('readwrite', entries => entries.put(entry)),
      remove: id => run('readwrite', entries => entries.delete(id)),
    };
  }

  function smallStore() {
    const read = () => JSON.parse(localStorage.getItem(KEY) || '{}');
    const write = entries => localStorage.setItem(KEY, JSON.stringify(entries));
    write(read());
    return {
      all: async () => Object.values(read()),
      put: async entry => write({ ...read(), [entry.id]: entry }),
      remove: async id => { const entries = read(); delete entries[id]; write(entries); },
    };
  }

  // What went into the smaller store while the database could not be opened.
  async function gather(kept) {
    let small;
    try {
      small = smallStore();
    } catch (e) {
      return;
    }
    for (const entry of await small.all()) {
      await kept.put(entry);
      await small.remove(entry.id);
    }
  }

  async function store() {
    try {
      const kept = database(await opened());
      await kept.all();
      await gather(kept);
      return kept;
    } catch (e) {
      try {
        return smallStore();
      } catch (f) {
        lasting = say('notKept');
        warn('');
        return { all: async () => entries, put: async () => {}, remove: async () => {} };
      }
    }
  }

  // What stays true whatever is tapped.
  let lasting = '';

  function warn(words) {
    $('warning').textContent = words || lasting;
    $('warning').hidden = !$('warning').textContent;
  }

  // Another tab of this page that is open beside this one hears of every change.
  const beside = 'BroadcastChannel' in window ? new BroadcastChannel(KEY) : { postMessage() {} };

  let keep;
  let changes = 0;
  let writing = Promise.resolve();
  let entries = [];
  let removed = [];
  let unkept = false;

  function full() {
    unkept = true;
    lasting = say('full');
    warn('');
  }

  async function put(entry) {
    const known = entries.findIndex(one => one.id === entry.id);
    if (known < 0) entries.push(entry); else entries[known] = entry;
    show();
    try {
      changes++;
      writing = keep.put(entry);
      await writing;
      beside.postMessage('changed');
    } catch (e) {
      full();
    }
  }

  async function remove(ids) {
    removed = entries.filter(entry => ids.includes(entry.id));
    entries = entries.filter(entry => !ids.includes(entry.id));
    for (const entry of entries.filter(one => one.together?.some(id => ids.includes(id)))) {
      entry.together = entry.together.filter(id => !ids.includes(id));
      await put(entry);
    }
    show();
    try {
      changes++;
      writing = Promise.all(ids.map(id => keep.remove(id)));
      await writing;
      beside.postMessage('changed');
    } catch (e) {
      full();
    }
  }

  // ---- Where: the nearest place on a river's line, measured on a flat earth, which over some 100 m is exact to the centimetre. ----

  const DEGREE = Math.PI / 180 * 6371008.8;

  function nearest(latitude, longitude) {
    let best = null;
    const shrink = Math.cos(latitude * Math.PI / 180);
    for (const river of water.rivers) {
      for (let i = 1; i < river.points.length; i++) {
        const [a, b] = [river.points[i - 1], river.points[i]];
        const ax = (a[1] - longitude) * shrink * DEGREE, ay = (a[0] - latitude) * DEGREE;
        const bx = (b[1] - longitude) * shrink * DEGREE, by = (b[0] - latitude) * DEGREE;
        const length = (bx - ax) ** 2 + (by - ay) ** 2;
        const share = length ? Math.max(0, Math.min(1, -(ax * (bx - ax) + ay * (by - ay)) / length)) : 0;
        const away = Math.hypot(ax + share * (bx - ax), ay + share * (by - ay));
        if (!best || away < best.away) {
          best = { river: river.name, metres: a[2] + share * (b[2] - a[2]), away };
        }
      }
    }
    return best;
  }

  const FAR = 250, COARSE = 100, OLD = 60e3, LANDMARK = 20, WENT_ON = 150, WHILE = 600e3;
  let fix = null;
  let chosen = null;

  // A clock that is set back must not make an old position new.
  const isFresh = one => Math.abs(Date.now() - one.heard) <= OLD;

  const ends = name => {
    const { points } = water.rivers.find(river => river.name === name);
    return [points[0][2], points.at(-1)[2]];
  };
  const within = (name, metres) => Math.max(ends(name)[0], Math.min(ends(name)[1], metres));

  // A landmark that was chosen holds until the phone has clearly gone on.
  function goOn() {
    if (!chosen || !fix || fix.accuracy > COARSE) return;
    const here = nearest(fix.latitude, fix.longitude);
    if (!here || here.away > FAR) return;
    if (!chosen.from) {
      chosen.from = here;
    } else if (here.river !== chosen.from.river || Math.abs(here.metres - chosen.from.metres) > WENT_ON + fix.accuracy) {
      chosen = null;
      warn(say('wentOn'));
    }
  }
  let trouble = say('waiting');

  // The place that a record gets now, or null.
  function place() {
    if (chosen) return { river: chosen.river, metres: chosen.metres, uncertainty: LANDMARK, position: '' };
    if (!fix || !isFresh(fix) || fix.accuracy > COARSE) return null;
    const here = nearest(fix.latitude, fix.longitude);
    if (!here || here.away > FAR) return null;
    return {
      river: here.river,
      metres: here.metres,
      uncertainty: Math.max(5, Math.round(fix.accuracy)),
      position: `${fix.latitude.toFixed(6)}, ${fix.longitude.toFixed(6)} ± ${Math.round(fix.accuracy)} m`,
    };
  }

  const km = metres => (metres / 1000).toFixed(2);
  const far = metres => metres < 1000 ? Math.round(metres / 5) * 5 + ' m' : (metres / 1000).toFixed(1) + ' km';

  function landmarksFrom(here) {
    return water.landmarks
      .map((landmark, mark) => ({ ...landmark, mark, along: here && here.river === landmark.river ? landmark.metres - here.metres : null }))
      .sort((a, b) => (a.along === null) - (b.along === null)
        || (a.along === null ? a.metres - b.metres : Math.abs(a.along) - Math.abs(b.along)));
  }

  function watch() {
    if (!navigator.geolocation) { trouble = say('noPosition'); show(); return; }
    navigator.geolocation.watchPosition(position => {
      fix = { ...coordinates(position.coords), heard: Date.now() };
      trouble = '';
      goOn();
      showPlace();
    }, refused => {
      trouble = refused.code === 1
        ? say(location.protocol === 'file:' || location.protocol === 'content:' ? 'refusedForFile' : 'refused')
        : say('noPositionNow');
      showPlace();
    }, { enableHighAccuracy: true, maximumAge: 5000, timeout: 30000 });
  }

  const coordinates = one => ({ latitude: one.latitude, longitude: one.longitude, accuracy: one.accuracy });

  // ---- When, and who ----

  const two = number => String(number).padStart(2, '0');
  const day = at => `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  const clock = at => `${two(at.getHours())}:${two(at.getMinutes())}`;

  function unique() {
    if (crypto.randomUUID) return crypto.randomUUID();
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    bytes[6] = bytes[6] & 0x0f | 0x40;
    bytes[8] = bytes[8] & 0x3f | 0x80;
    const hex = [...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('');
    return hex.replace(/(.{8})(.{4})(.{4})(.{4})(.{12})/, '$1-$2-$3-$4-$5');
  }

  // ---- Birds ----

  const sightings = () => entries.filter(entry => entry.kind === 'sighting').sort((a, b) => a.at - b.at);
  const isOver = visit => !!(visit.end || visit.over);
  const running = () => entries.find(entry => entry.kind === 'visit' && !isOver(entry));
  const isOfToday = visit => visit.date === day(new Date());
  const code = species => document.querySelector(`[data-species="${species}"] b`).textContent;
  let species = null;
  let waiting = null;

  function briefly(sighting) {
    const number = sighting.count > (sighting.doing === 'pair' ? 2 : 1) ? sighting.count + ' ' : '';
    const doing = sighting.doing === 'seen' ? '' : ' ' + say('do.' + sighting.doing);
    return `${sighting.time} ${number}${code(sighting.species)}${doing}`;
  }

  function what(sighting) {
    return [
      briefly(sighting),
      sighting.turnedBack && say('turnedBackAt', km(sighting.flewTo)),
      sighting.together.length && say('atOnce'),
    ].filter(Boolean).join(', ');
  }

  function see(doing, written) {
    const here = place();
    if (!here) {
      waiting = { doing, written };
      warn(say('placeFirst'));
      $('landmarks').scrollIntoView({ block: 'center' });
      return;
    }
    waiting = null;
    warn('');
    const now = new Date();
    put({
      id: unique(), kind: 'sighting', at: now.getTime(), visit: running() && isOfToday(running()) ? running().id : null,
      date: day(now), time: clock(now), river: here.river, metres: Math.round(here.metres * 10) / 10,
      uncertainty: here.uncertainty, position: here.position, species, doing, written,
      count: doing === 'pair' ? 2 : 1, together: [], flewTo: null, turnedBack: false, note: '',
    });
    species = null;
    removed = [];
    navigator.vibrate?.(40);
    show();
  }

  // What a record is called in the tables: its day, and the beginning of its identifier, short enough to be read.
  const visitLabel = one => `${one.date} ${one.id.slice(0, 8)}`;
  const sightingLabel = one => `p-${one.id.slice(0, 8)}`;
  const byId = id => entries.find(entry => entry.id === id);

  // ---- Handing out: two tables in one zip, stored without packing. ----

  const cell = value => {
    const text = value === null || value === undefined ? '' : String(value);
    return /[",;\r\n\t]/.test(text) ? '"' + text.replace(/"/g, '""') + '"' : text;
  };
  const table = rows => rows.map(row => row.map(cell).join(',') + '\r\n').join('');
  const threeDecimals = metres => metres === null ? '' : (metres / 1000).toFixed(3);

  // What may go out: nothing of a visit that is still open, and no bird that was seen at once with one that stays.
  function ready() {
    const open = new Set(entries.filter(entry => entry.kind === 'visit' && !isOver(entry)).map(visit => visit.id));
    const held = new Set(entries.filter(entry => open.has(entry.id) || open.has(entry.visit)).map(entry => entry.id));
    let before;
    do {
      before = held.size;
      for (const one of sightings()) if (one.together.some(id => held.has(id))) held.add(one.id);
    } while (held.size > before);
    return entries.filter(entry => !held.has(entry.id));
  }

  function tables() {
    const going = new Set(ready().map(entry => entry.id));
    const visits = entries.filter(entry => entry.kind === 'visit' && going.has(entry.id));
    const out = sightings().filter(one => going.has(one.id));
    const observers = one => byId(one.visit)?.observers || '';
    return {
      count: visits.length + out.length,
      visits: table([
        ['visit', 'date', 'start', 'end', 'river', 'from_km', 'to_km', 'direction', 'observers', 'species', 'level', 'weather', 'effective', 'note'],
        ...visits.map(one => [visitLabel(one), one.date, one.start, one.end, one.river, threeDecimals(one.from), threeDecimals(one.to),
          one.direction, one.observers, one.species.join('; '), one.level, one.weather, one.effective ? 'yes' : 'no', one.note]),
      ]),
      sightings: table([
        ['sighting', 'visit', 'date', 'time', 'river', 'km', 'uncertainty_m', 'species', 'count', 'age', 'activity',
          'simultaneous_with', 'flew_to_km', 'turned_back', 'observer', 'note'],
        ...out.map(one => [sightingLabel(one), byId(one.visit) ? visitLabel(byId(one.visit)) : '', one.date, one.time, one.river, threeDecimals(one.metres), one.uncertainty,
          one.species, one.count, one.doing === 'juvenile' ? 'juvenile' : '', one.written, one.together.filter(byId).map(id => sightingLabel(byId(id))).join('; '),
          threeDecimals(one.flewTo), one.turnedBack ? 'yes' : '', observers(one),
          [one.note, one.position && say('position', one.position)].filter(Boolean).join('; ')]),
      ]),
    };
  }

  const CRC = Array.from({ length: 256 }, (_, n) => {
    for (let bit = 0; bit < 8; bit++) n = n & 1 ? 0xedb88320 ^ n >>> 1 : n >>> 1;
    return n >>> 0;
  });

  function zip(files) {
    const parts = [];
    const central = [];
    let at = 0;
    const numbers = layout => {
      const bytes = new DataView(new ArrayBuffer(layout.reduce((sum, [size]) => sum + size, 0)));
      let place = 0;
      for (const [size, value] of layout) {
        if (size === 2) bytes.setUint16(place, value, true); else bytes.setUint32(place, value, true);
        place += size;
      }
      return new Uint8Array(bytes.buffer);
    };
    const add = (list, bytes) => { list.push(bytes); return bytes.length; };
    const now = new Date();
    const time = now.getHours() << 11 | now.getMinutes() << 5 | now.getSeconds() >> 1;
    const date = now.getFullYear() - 1980 << 9 | now.getMonth() + 1 << 5 | now.getDate();
    for (const [name, text] of files) {
      const data = new TextEncoder().encode(text);
      const title = new TextEncoder().encode(name);
      let crc = 0xffffffff;
      for (const byte of data) crc = CRC[(crc ^ byte) & 0xff] ^ crc >>> 8;
      crc = (crc ^ 0xffffffff) >>> 0;
      const common = [[2, 20], [2, 0x800], [2, 0], [2, time], [2, date], [4, crc], [4, data.length], [4, data.length], [2, title.length], [2, 0]];
      central.push(numbers([[4, 0x02014b50], [2, 20], ...common, [2, 0], [2, 0], [2, 0], [4, 0], [4, at]]), title);
      at += add(parts, numbers([[4, 0x04034b50], ...common])) + add(parts, title) + add(parts, data);
    }
    const size = central.reduce((sum, bytes) => sum + bytes.length, 0);
    return new Blob([...parts, ...central, numbers([[4, 0x06054b50], [2, 0], [2, 0], [2, files.length], [2, files.length], [4, size], [4, at], [2, 0]])],
      { type: 'application/zip' });
  }

  function file() {
    const { visits, sightings: seen, count } = tables();
    if (!count) return null;
    return new File([zip([['visits.csv', visits], ['sightings.csv', seen]])], `pocket-${day(new Date())}.zip`, { type: 'application/zip' });
  }

  function handOut(out) {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(out);
    link.download = out.name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60e3);
  }

  // ---- What is seen ----

  function element(name, words, ...children) {
    const made = document.createElement(name);
    if (words) made.textContent = words;
    made.append(...children);
    return made;
  }

  function button(words, act) {
    const made = element('button', words);
    made.type = 'button';
    made.addEventListener('click', act);
    return made;
  }

  function showPlace() {
    const here = place();
    const near = landmarksFrom(here)[0];
    $('nudges').hidden = !chosen;
    if (!here) {
      const away = fix && !chosen ? nearest(fix.latitude, fix.longitude)?.away : 0;
      $('where').textContent = away > FAR ? say('farFromWater', far(away)) : say('noPlace');
      $('fix').textContent = trouble || (fix && fix.accuracy > COARSE ? say('coarse', Math.round(fix.accuracy)) : say('old'));
    } else {
      $('where').textContent = say('at', here.river, km(here.metres));
      const by = near && near.along !== null && Math.abs(near.along) >= 3
        ? say(near.along > 0 ? 'below' : 'above', far(Math.abs(near.along)), near.name)
        : near && near.along !== null ? near.name : '';
      $('fix').textContent = [by, chosen ? sinceChosen() : say('accuracy', here.uncertainty)].filter(Boolean).join(' · ');
    }
    showLandmarks(here);
  }

  const sinceChosen = () => {
    const minutes = Math.round((Date.now() - chosen.at) / 60e3);
    return minutes * 60e3 >= WHILE ? say('chosenLong', minutes) : say('chosen');
  };

  // The buttons stay the same ones, so that neither a finger nor the keys lose them when the phone moves.
  const lines = new Map();

  function lineOf(landmark) {
    if (!lines.has(landmark.mark)) {
      const made = button('', () => choose(landmark));
      const away = element('span');
      away.className = 'far';
      made.append(element('span', landmark.name), away);
      lines.set(landmark.mark, { line: element('li', '', made), away });
    }
    return lines.get(landmark.mark);
  }

  function showLandmarks(here) {
    const sorted = landmarksFrom(here);
    for (const landmark of sorted) {
      lineOf(landmark).away.textContent = landmark.along === null ? say('at', landmark.river, km(landmark.metres))
        : Math.abs(landmark.along) < 3 ? say('here')
        : say(landmark.along > 0 ? 'upstream' : 'downstream', far(Math.abs(landmark.along)));
    }
    const wanted = sorted.map(landmark => lineOf(landmark).line);
    const shown = [...$('landmarks').children];
    if (wanted.length !== shown.length || wanted.some((line, i) => line !== shown[i])) $('landmarks').replaceChildren(...wanted);
  }

  function choose(landmark) {
    chosen = landmark && { river: landmark.river, metres: landmark.metres, at: Date.now(), from: null };
    if (fix && isFresh(fix)) goOn();
    if (landmark && waiting && species) see(waiting.doing, waiting.written);
    show();
    window.scrollTo({ top: 0 });
  }

  function showLast() {
    const last = sightings().at(-1);
    const parts = [];
    const said = removed.length ? say('takenBack') : last ? say('noted', what(last), last.river, km(last.metres)) : '';
    if ($('said').textContent !== said) $('said').textContent = said;
    if (removed.length) {
      parts.push(button(say('bringBack'), async () => {
        const back = removed;
        removed = [];
        for (const entry of back) await put(entry);
        show();
      }));
    } else if (last) {
      const before = sightings().filter(one => one.id !== last.id && one.species === last.species
        && one.date === last.date && one.river === last.river).at(-1);
      const row = element('div');
      row.className = 'row';
      const change = changes => {
        if (last.handedOut) warn(say('changedLater'));
        return put({ ...last, ...changes, handedOut: false });
      };
      if (before) {
        const linked = last.together.includes(before.id);
        const together = button(say('together', briefly(before)), async () => {
          const other = { ...before, handedOut: false, together: linked ? before.together.filter(id => id !== last.id) : [...before.together, last.id] };
          await put(other);
          await change({ together: linked ? last.together.filter(id => id !== before.id) : [...last.together, before.id] });
        });
        together.id = 'together';
        together.setAttribute('aria-pressed', linked);
        row.append(together);
      }
      const back = button(say('turnedBack'), () => {
        const here = place();
        if (last.turnedBack) { change({ flewTo: null, turnedBack: false }); return; }
        if (!here || here.river !== last.river || Math.abs(here.metres - last.metres) < 5) { warn(say('goWhereItTurned')); return; }
        warn('');
        change({ flewTo: Math.round(here.metres * 10) / 10, turnedBack: true });
      });
      back.id = 'turned';
      back.setAttribute('aria-pressed', last.turnedBack);
      row.append(back);
      const down = button(say('nudgeDown'), () => change({ metres: within(last.river, last.metres - 50) }));
      const up = button(say('nudgeUp'), () => change({ metres: within(last.river, last.metres + 50) }));
      down.id = 'bird-down';
      up.id = 'bird-up';
      const more = button('+1', () => change({ count: last.count + 1 }));
      more.id = 'one-more';
      const note = button(say('note'), () => {
        const words = prompt(say('notePrompt'), last.note);
        if (words !== null) change({ note: words.trim() });
      });
      note.id = 'note';
      const undo = button(say('undo'), () => remove([last.id]));
      undo.id = 'undo';
      row.append(undo, note, more, down, up);
      parts.push(row);
      if (last.note) parts.push(element('p', last.note));
    }
    $('last-more').replaceChildren(...parts);
    $('last').hidden = !said;
  }

  function showNotes() {
    const lines = [...entries].sort((a, b) => b.at - a.at).map(entry => {
      const words = entry.kind === 'visit'
        ? say(isOver(entry) ? 'visitLine' : 'visitOpen', entry.date, entry.start, entry.river, entry.end || '?')
        : `${what(entry)} · ${say('at', entry.river, km(entry.metres))}`;
      const gone = button(say('delete'), () => {
        if (gone.dataset.sure) remove([entry.id]);
        else { gone.dataset.sure = 'yes'; name(say('sure')); }
      });
      const name = shown => { gone.textContent = shown; gone.setAttribute('aria-label', `${shown} ${words}`); };
      name(say('delete'));
      const line = element('li', '', element('span', words), gone);
      line.className = entry.kind === 'visit' ? 'walk' : '';
      return line;
    });
    $('notes').replaceChildren(...lines);
    const going = ready().length;
    const held = entries.length - going;
    $('kept').textContent = (entries.length ? say('kept', entries.length) : say('empty')) + (held ? ' ' + say('held', held) : '');
    $('save').disabled = $('send').disabled = !going;
    $('clear').hidden = !entries.some(entry => entry.handedOut);
    $('clear').textContent = say('clearNow');
    delete $('clear').dataset.sure;
  }

  function showVisit() {
    const visit = running();
    $('visit').classList.toggle('open', !!visit);
    $('begin').hidden = !!visit;
    $('finish').hidden = !visit;
    $('running').textContent = !visit ? say('noVisit')
      : !isOfToday(visit) ? say('stillOpen', visit.date, visit.river)
      : say('running', visit.start, visit.river, visit.species.map(code).join(', '));
  }

  function show() {
    const held = document.activeElement?.id;
    for (const one of document.querySelectorAll('[data-species]')) {
      one.setAttribute('aria-pressed', one.dataset.species === species);
    }
    for (const one of document.querySelectorAll('[data-doing]')) one.disabled = !species;
    showPlace();
    showVisit();
    showLast();
    showNotes();
    if (held && document.activeElement?.id !== held) $(held)?.focus({ preventScroll: true });
  }

  // ---- What is tapped ----

  for (const one of document.querySelectorAll('[data-species]')) {
    one.addEventListener('click', () => { species = species === one.dataset.species ? null : one.dataset.species; show(); });
  }
  for (const one of document.querySelectorAll('[data-doing]')) {
    one.addEventListener('click', () => see(one.dataset.doing, one.dataset.written));
  }
  for (const one of document.querySelectorAll('[data-close]')) {
    one.addEventListener('click', () => $(one.dataset.close).close());
  }
  const shift = by => { chosen.metres = within(chosen.river, chosen.metres + by); show(); };
  $('up50').addEventListener('click', () => shift(50));
  $('down50').addEventListener('click', () => shift(-50));
  $('follow').addEventListener('click', () => choose(null));

  // What the phone wrote itself and nobody changed stays as exact as the phone knew it.
  const suggest = (id, metres) => {
    $(id).value = metres === null ? '' : km(metres);
    $(id).dataset.metres = metres === null ? '' : Math.round(metres * 10) / 10;
  };

  const kmIn = id => {
    const text = $(id).value.trim().replace(',', '.');
    if (text !== '' && $(id).dataset.metres && text === km(+$(id).dataset.metres)) return +$(id).dataset.metres;
    return text === '' ? null : Number.isFinite(+text) && +text >= 0 ? +text * 1000 : NaN;
  };

  const outside = name => say('outside', name, km(ends(name)[0]), km(ends(name)[1]));

  $('begin').addEventListener('click', () => {
    $('start-problem').textContent = '';
    const here = place();
    $('start-river').replaceChildren(...water.rivers.map(river => new Option(river.name, river.name)));
    if (here) $('start-river').value = here.river;
    suggest('start-from', here ? here.metres : null);
    $('start').showModal();
  });
  $('begin-now').addEventListener('click', () => {
    const now = new Date();
    const from = kmIn('start-from');
    const river = $('start-river').value;
    if (from !== null && (Number.isNaN(from) || from !== within(river, from))) { $('start-problem').textContent = outside(river); return; }
    put({
      id: unique(), kind: 'visit', at: now.getTime(), date: day(now), start: clock(now), end: null,
      river, from, to: null, direction: $('start-direction').value,
      species: [...document.querySelectorAll('#start .ticks input:checked')].map(tick => tick.value),
      observers: $('start-observers').value.trim(), level: $('start-level').value, weather: $('start-weather').value,
      effective: true, note: '',
    });
    $('start').close();
  });

  // A visit that was left open ended with its last bird, as far as the phone knows.
  function endOf(visit) {
    const now = new Date();
    const last = sightings().filter(sighting => sighting.visit === visit.id).at(-1);
    const end = isOfToday(visit) ? clock(now) : last ? last.time : '';
    return end >= visit.start ? end : '';
  }

  $('finish').addEventListener('click', () => {
    const visit = running();
    const here = place();
    suggest('end-to', here && here.river === visit.river && isOfToday(visit) ? here.metres : null);
    $('end-at').value = endOf(visit);
    $('end-effective').checked = visit.level !== 'spate';
    $('end-problem').textContent = '';
    $('seen').replaceChildren(...visit.species.map(one => {
      const count = sightings().filter(sighting => sighting.visit === visit.id && sighting.species === one).length;
      return element('li', count ? say('seenOf', one, count) : say('notSeen', one));
    }));
    $('end').showModal();
  });
  $('finish-now').addEventListener('click', () => {
    const visit = running();
    const problem = words => { $('end-problem').textContent = words; };
    const to = kmIn('end-to');
    const end = $('end-at').value;
    if (end && end < visit.start) { problem(say('endsBefore', visit.start)); return; }
    if (to !== null && (Number.isNaN(to) || to !== within(visit.river, to))) { problem(outside(visit.river)); return; }
    const known = visit.from !== null && to !== null && Math.abs(to - visit.from) >= 5;
    const asked = visit.from === null ? say('noStart') : say('noEnd');
    if (!known && $('end-problem').textContent !== asked) { problem(asked); return; }
    put({ ...visit, end: end || null, over: true, from: known ? visit.from : null, to: known ? to : null,
      effective: $('end-effective').checked, note: $('end-note').value.trim() });
    $('end').close();
  });

  async function handedOut() {
    for (const entry of ready()) await put({ ...entry, handedOut: true });
  }
  $('save').addEventListener('click', () => { const out = file(); if (out) { handOut(out); handedOut(); } });
  $('send').addEventListener('click', async () => {
    try {
      await navigator.share({ files: [file()] });
      handedOut();
    } catch (e) {
      if (e.name !== 'AbortError') warn(say('notSent'));
    }
  });
  $('send').hidden = !(navigator.canShare && navigator.canShare({ files: [new File(['x'], 'x.zip', { type: 'application/zip' })] }));
  $('clear').addEventListener('click', () => {
    if ($('clear').dataset.sure) remove(entries.filter(entry => entry.handedOut).map(entry => entry.id));
    else { $('clear').dataset.sure = 'yes'; $('clear').textContent = say('clearSure'); }
  });

  // ---- Begin ----

  $('needs-script').hidden = true;
  $('app').hidden = false;
  keep = await store();
  entries = await keep.all();
  navigator.storage?.persist?.();
  async function readAgain() {
    if (document.hidden || unkept) return;
    let before, kept;
    do {
      before = changes;
      await writing.catch(() => {});
      kept = await keep.all();
    } while (changes > before);
    if (unkept) return;
    entries = kept;
    show();
  }
  document.addEventListener('visibilitychange', readAgain);
  beside.onmessage = readAgain;
  setInterval(showPlace, 15e3);
  show();
  watch();
})();
