// The controls beside the chart.
import { settings, LEVELS, FOREVER } from './settings.js';

export function wireControls(page, data, text) {
  const fill = (id, labels, values = labels.map((label, i) => i)) => {
    labels.forEach((label, i) => {
      const option = document.createElement('option');
      option.value = values[i];
      option.textContent = label;
      document.getElementById(id).append(option);
    });
  };
  fill('part', data.parts.map((part) => part.name));
  document.getElementById('part-row').hidden = data.parts.length < 2;
  fill('system', data.systems.map((system) => system.title));
  fill('stage', data.stages);
  choice(page, data, 'part', Number, () => page.choosePart());
  choice(page, data, 'system', Number, () => {
    page.write();
    page.changed();
  });
  choice(page, data, 'stage', Number, () => {
    page.write();
    page.changed();
  });
  choice(page, data, 'size', String, () => {
    page.chart.size = page.set.size;
    page.redraw();
  });
  choice(page, data, 'light', String, () => showLight(page));
  ['swing', 'silent'].forEach((id) => choice(page, data, id, String, () => page.changed()));
  ['place', 'percent', 'clean-times'].forEach((id) => choice(page, data, id, Number, () => {
    page.stepsChanged();
    page.changed();
  }, id === 'clean-times' ? 'clean' : id));
  choice(page, data, 'up', String, () => page.stepsChanged());
  for (const id of ['countIn', 'repeat', 'alone']) {
    document.getElementById(id).checked = page.set[id];
    document.getElementById(id).addEventListener('change', () => {
      page.set[id] = document.getElementById(id).checked;
      page.player.repeats = page.set.repeat ? FOREVER : 1;
      page.changed();
    });
  }
  for (const level of LEVELS) {
    const slider = document.getElementById('level-' + level);
    slider.value = page.set.levels[level];
    slider.addEventListener('input', () => {
      page.set.levels[level] = Number(slider.value);
      if (page.player.desk) {
        page.player.desk.setLevels(page.levels());
      }
      page.store();
    });
  }
  document.getElementById('voice-row').hidden = !data.voice;
  document.getElementById('loop').addEventListener('change', () => {
    if (document.getElementById('loop').value === 'own') {
      page.setMarking(true);
    } else {
      page.cursor = null;
      page.chooseLoop(document.getElementById('loop').value);
    }
  });
  const click = (id, what) => document.getElementById(id).addEventListener('click', what);
  click('play', () => page.toggle());
  click('slower', () => page.setTempo(page.perMinute - 1));
  click('faster', () => page.setTempo(page.perMinute + 1));
  click('tap', () => page.tap());
  click('clean', () => page.clean());
  click('again', () => page.again());
  click('mark', () => page.toggleMarking());
  click('start', () => {
    page.cursor = null;
    page.showMarks();
  });
  click('export', () => page.export());
  const ticks = document.getElementById('ticks-file');
  click('import', () => ticks.click());
  ticks.addEventListener('change', () => {
    page.import(ticks.files[0]);
    ticks.value = '';
  });
  click('forget', () => {
    page.ladder.forget();
    page.stepsChanged();
  });
  click('print', () => window.print());
  document.getElementById('tempo').addEventListener('input', () => page.setTempo(Number(document.getElementById('tempo').value), false));
  window.addEventListener('beforeprint', () => page.redraw(true));
  window.addEventListener('afterprint', () => page.redraw());
  window.addEventListener('resize', () => {
    clearTimeout(page.resizing);
    page.resizing = setTimeout(() => page.redraw(), 150);
  });
  showLight(page);
}

function showLight(page) {
  document.documentElement.dataset.light = page.set.light;
}

function choice(page, data, id, type, then, name = id) {
  document.getElementById(id).value = page.set[name];
  document.getElementById(id).addEventListener('change', () => {
    const value = type(document.getElementById(id).value);
    if (type !== Number || Number.isFinite(value)) {
      page.set[name] = value;
      page.set = settings(page.set, data);
      document.getElementById(id).value = page.set[name];
      then();
      page.store();
    }
  });
}

// For each beat that a bar has: whether it clicks, and whether it is placed.
export function fillBeats(page) {
  const most = Math.max(...page.line.bars.map((bar) => Math.max(...bar.beats.map((beat) => beat.number))));
  const all = Array.from({ length: Math.min(most, 32) }, (_, i) => i + 1);
  for (const [id, name] of [['beats', 'beats'], ['place-beats', 'placeBeats']]) {
    document.getElementById(id).querySelectorAll('label').forEach((label) => label.remove());
    page.set[name] = page.set[name].filter((beat) => beat <= most);
    for (const beat of all) {
      const label = document.createElement('label');
      const box = document.createElement('input');
      box.type = 'checkbox';
      box.checked = page.set[name].length === 0 || page.set[name].includes(beat);
      label.append(box, ' ' + beat);
      document.getElementById(id).append(label);
      box.addEventListener('change', () => {
        const boxes = [...document.getElementById(id).querySelectorAll('input')];
        const chosen = boxes.map((one, i) => (one.checked ? i + 1 : 0)).filter(Boolean);
        // none: no beat at all is chosen, which no bar has
        page.set[name] = chosen.length === boxes.length ? [] : chosen.length ? chosen : [999];
        page.changed();
      });
    }
  }
}
