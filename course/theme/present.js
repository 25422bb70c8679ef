/* Shows a page to a room: one heading, one sentence, one picture at a time, with the speaker's notes in a window of their own.
   Keys: arrows, Page Up and Page Down (what a clicker sends), space, Home, End; p plays, b darkens, Escape ends. */
(function () {
  "use strict";

  var PIECES = "[data-present], .turning";  /* what is shown whole though it is no figure: a bench, with its knobs */
  var main = document.getElementById("text"), notes = document.getElementById("notes");
  var slides = [], at = 0, stage = null, speaker = null, began = 0, shown = null, home = null, before = null, ours = false;

  function make(tag, name, text) {
    var element = document.createElement(tag);
    if (name) element.className = name;
    if (text) element.textContent = text;
    return element;
  }

  function button(name, text, does) {
    var element = make("button", name, text);
    element.type = "button";
    element.addEventListener("click", does);
    return element;
  }

  /* ---- What there is to show ---- */

  /* The first sentence of a paragraph, formulas and all; a bold catchword of a few letters does not count as one. */
  function firstSentence(paragraph) {
    var walk = document.createTreeWalker(paragraph, NodeFilter.SHOW_TEXT), range = document.createRange(), length = 0, node, end;
    range.setStart(paragraph, 0);
    range.setEnd(paragraph, paragraph.childNodes.length);
    while ((node = walk.nextNode())) {
      if (node.parentElement.closest(".katex, code, .hold")) continue;
      var ends = /[.?!](?=["'’)]*(\s|$))/g;
      while ((end = ends.exec(node.data))) {
        if (length + end.index > 24) {
          range.setEnd(node, end.index + 1);
          return tidy(range.cloneContents());
        }
      }
      length += node.data.length;
    }
    return tidy(range.cloneContents());
  }

  function tidy(fragment) {
    var line = make("p", "stage-say");
    line.appendChild(fragment);
    line.querySelectorAll(".hold, [id]").forEach(function (part) {
      if (part.matches(".hold")) part.remove(); else part.removeAttribute("id");
    });
    return line;
  }

  function plain(element) {
    var copy = element.cloneNode(true);
    copy.querySelectorAll("[id]").forEach(function (part) { part.removeAttribute("id"); });
    copy.removeAttribute("id");
    return copy;
  }

  function notesOf(heading) {
    var number = /^(\d+)\./.exec(heading.textContent.trim());
    if (!number || !notes) return [];
    return Array.from(notes.querySelectorAll('[data-section="' + number[1] + '"]'), plain);
  }

  function collect() {
    var title = main.querySelector("h1"), line = main.querySelector(".question-line"), chapter = "", now;
    var parts = "h2, h3, p, figure, .formula, .wide, .block, .exercise, " + PIECES;

    function begin(kicker, heading, rest) {
      now = Object.assign({ kicker: kicker, title: heading, chapter: kicker, section: heading, say: null, show: null, spare: null, notes: [], full: false }, rest);
      slides.push(now);
      return now;
    }

    begin(textOf(main.querySelector(".unit-line")), textOf(title), { say: line && tidy(plain(line)), full: true });
    main.querySelectorAll(parts).forEach(function (part) {
      if (part.parentElement.closest("figure, .block, .exercise, .wide, " + PIECES) || part.matches(".unit-line, .question-line")) return;
      if (part.matches("h2, h3")) {
        var of = part.matches("h3") ? chapter : textOf(title);
        if (part.matches("h2")) chapter = part.textContent;
        begin(of, part.textContent, { notes: notesOf(part) });
      } else if (part.matches("figure, " + PIECES)) {
        var further = now.full || now.show;
        if (further) begin(now.chapter, now.section);
        now.show = part;
        if (!now.say && part.matches("figure")) {
          now.say = firstSentence(part.querySelector("figcaption"));
          now.open = !further;
        }
        if (part.dataset.present) now.title = part.dataset.present;
      } else if (part.matches(".danger, .caution, .question, .exercise")) {
        begin(now.chapter, "", { full: true, section: now.section });
        if (part.matches(".exercise")) {
          now.title = textOf(part.querySelector(".exercise-title"));
          now.kicker = "Exercise";
          now.spare = Array.from(part.querySelectorAll("p code")).filter(function (code) { return /^checker try/.test(code.textContent); }).map(plain)[0];
        } else {
          now.kicker = textOf(part.querySelector(".block-word"));
          now.title = textOf(part.querySelector(".block-title")).replace(now.kicker, "").trim();
          now.warns = part.matches(".danger, .caution");
          var text = make("div", "stage-answer");
          Array.from(part.children).slice(1).forEach(function (child) { text.appendChild(plain(child)); });
          if (part.matches(".question")) now.answer = text;
          else if (part.querySelector("p:not(.block-title)")) now.say = firstSentence(part.querySelector("p:not(.block-title)"));
          else now.spare = text;
        }
      } else if (part.matches(".instructor")) {
        now.notes.push(plain(part));
      } else if (part.matches(".formula, .wide")) {
        if (!now.full && !now.spare) now.spare = plain(part);
      } else if (part.matches("p") && part.textContent.trim()) {
        var marked = part.querySelector(".say");
        if (!now.full && marked && !now.marked) { now.say = tidy(plain(marked)); now.marked = true; now.open = false; }
        else if (!now.full && (!now.say || now.open) && !part.querySelector(".formula")) { now.say = firstSentence(part); now.open = false; }
      }
    });
  }

  function textOf(element) { return element ? element.textContent.trim() : ""; }

  /* ---- The stage ---- */

  function open(figure) {
    if (!slides.length) collect();
    var place = slides.findIndex(function (slide) { return figure && slide.show === figure; });
    if (figure && place < 0) place = slides.push({ kicker: "", title: textOf(main.querySelector("h1")), show: figure, notes: [], say: firstSentence(figure.querySelector("figcaption") || figure) }) - 1;
    before = document.activeElement;
    began = Date.now();
    stage = make("div", "stage");
    stage.setAttribute("role", "dialog");
    stage.setAttribute("aria-modal", "true");
    stage.setAttribute("aria-label", "Presentation");
    stage.tabIndex = -1;
    var slide = make("div", "stage-slide"), bar = make("div", "stage-bar");
    slide.setAttribute("aria-live", "polite");
    bar.append(button("stage-back", "Back", function () { go(at - 1); }), make("span", "stage-count"),
      button("stage-next", "Next", function () { forward(); }), make("span", "stage-word"), button("stage-notes", "Notes", openNotes),
      button("stage-full", "Full screen", fullScreen), button("stage-close", "Close", close));
    stage.append(slide, bar);
    Array.from(document.body.children).forEach(function (child) { child.inert = true; });
    document.body.appendChild(stage);
    document.documentElement.classList.add("staged");
    var start = null;
    stage.addEventListener("pointerdown", function (event) { start = event.target.closest("audio, button, input, " + PIECES) ? null : event; });
    stage.addEventListener("pointerup", function (event) {
      var across = start ? event.clientX - start.clientX : 0;
      start = null;
      if (Math.abs(across) > 60) { if (across < 0) forward(); else go(at - 1); }
    });
    go(Math.max(place, 0));
    stage.focus();
  }

  function close() {
    if (!stage) return;
    putBack();
    stage.remove();
    stage = null;
    Array.from(document.body.children).forEach(function (child) { child.inert = false; });
    document.documentElement.classList.remove("staged");
    if (speaker && !speaker.closed) speaker.close();
    speaker = null;
    if (document.fullscreenElement) { ours = false; document.exitFullscreen(); }
    if (before) before.focus();
  }

  function fullScreen() {
    if (document.fullscreenElement) { ours = false; document.exitFullscreen(); return; }
    var asked = document.documentElement.requestFullscreen && document.documentElement.requestFullscreen();
    if (asked) asked.then(function () { ours = true; }, function () { /* refused: the stage fills the window all the same */ });
  }

  /* A picture is shown itself, not a copy, so that sounds, motion and knobs go on working; here it goes home again. */
  function putBack() {
    if (!home) return;
    shown.querySelectorAll("audio").forEach(function (audio) { audio.pause(); });
    home.replaceWith(shown);
    home = null;
  }

  function go(place) {
    if (place < 0 || place >= slides.length) return;
    putBack();
    at = place;
    var slide = slides[at], sheet = stage.querySelector(".stage-slide");
    sheet.replaceChildren();
    sheet.className = "stage-slide" + (slide.warns ? " stage-warns" : "") + (slide.show ? " stage-drawn" : "");
    if (slide.kicker) sheet.append(make("p", "stage-kicker", slide.kicker));
    sheet.append(make("h2", "stage-title", slide.title));
    if (slide.say) sheet.append(slide.say.cloneNode(true));
    if (slide.show || slide.spare) {
      var room = make("div", "stage-show");
      if (slide.show) {
        home = document.createComment("shown on the stage");
        shown = slide.show;
        shown.replaceWith(home);
        room.append(shown);
      } else room.append(slide.spare.cloneNode(true));
      sheet.append(room);
    }
    stage.querySelector(".stage-count").textContent = at + 1 + " / " + slides.length;
    stage.querySelector(".stage-back").disabled = at === 0;
    stage.querySelector(".stage-next").disabled = at === slides.length - 1 && !slide.answer;
    if (!stage.contains(document.activeElement)) stage.focus();
    mark();
  }

  /* On to the answer of a question, then to the next slide. */
  function forward() {
    var sheet = stage.querySelector(".stage-slide"), answer = slides[at].answer;
    if (answer && !sheet.querySelector(".stage-answer")) {
      sheet.append(answer.cloneNode(true));
      stage.querySelector(".stage-next").disabled = at === slides.length - 1;
    } else go(at + 1);
  }

  function key(event) {
    if (!stage || event.ctrlKey || event.altKey || event.metaKey) return;
    var on = event.target.closest ? event.target : document.body, pressed = event.key, audio = stage.querySelector("audio");
    if (on.closest("input:not([type=checkbox]), select, textarea") && pressed !== "Escape" && !/^Page/.test(pressed)) return;
    if (on.closest("button, audio, input, summary, a") && (pressed === " " || pressed === "Enter")) return;
    if (/^(ArrowRight|ArrowDown|PageDown|Enter| )$/.test(pressed)) forward();
    else if (/^(ArrowLeft|ArrowUp|PageUp|Backspace)$/.test(pressed)) go(at - 1);
    else if (pressed === "Home") go(0);
    else if (pressed === "End") go(slides.length - 1);
    else if (pressed === "Escape") close();
    else if (pressed === "b" || pressed === ".") stage.classList.toggle("stage-dark");
    else if (pressed === "p" && audio) { if (audio.paused) audio.play(); else audio.pause(); }
    else if (pressed !== "F5") return;
    event.preventDefault();
    event.stopPropagation();
  }

  document.addEventListener("keydown", key, true);
  document.addEventListener("fullscreenchange", function () {
    if (!document.fullscreenElement && ours) { ours = false; close(); }
  });

  /* ---- The speaker's window ---- */

  function openNotes() {
    var word = stage.querySelector(".stage-word");
    stage.focus();
    speaker = window.open("", "course-notes", "width=760,height=860");
    if (!speaker) { word.textContent = "The browser kept the window shut: allow pop-up windows for this page."; return; }
    word.textContent = "";
    var page = speaker.document;
    page.title = "Notes: " + document.title;
    page.documentElement.lang = document.documentElement.lang;
    if (document.documentElement.dataset.light) page.documentElement.dataset.light = document.documentElement.dataset.light;
    page.head.replaceChildren();
    document.querySelectorAll("head style, head link[rel=stylesheet]").forEach(function (sheet) {
      var copy = page.importNode(sheet, true);
      if (copy.href) copy.setAttribute("href", sheet.href);
      page.head.appendChild(copy);
    });
    page.body.className = "speaker";
    page.body.replaceChildren();
    var bar = make("div", "speaker-bar"), list = make("ol", "speaker-slides");
    bar.append(make("b", "speaker-clock"), button("", "Back", function () { go(at - 1); }), button("", "Next", forward),
      button("", "Print", function () { speaker.print(); }));
    slides.forEach(function (slide, place) {
      var item = make("li"), head = button("speaker-title", (slide.kicker ? slide.kicker + ": " : "") + slide.title, function () { go(place); });
      item.append(head);
      if (slide.say) item.append(plain(slide.say));
      if (slide.answer) item.append(slide.answer.cloneNode(true));
      slide.notes.forEach(function (note) { var box = make("div", "speaker-note"); box.append(note.cloneNode(true)); item.append(box); });
      list.append(item);
    });
    var heading = make("h1", "", textOf(main.querySelector("h1")) + ": the speaker’s notes");
    page.body.append(page.adoptNode(bar), page.adoptNode(heading), page.adoptNode(list));
    page.addEventListener("keydown", key, true);
    mark();
    tick();
  }

  /* In the speaker's window: which slide is on, and how long it has been going. */
  function mark() {
    if (!speaker || speaker.closed) return;
    speaker.document.querySelectorAll(".speaker-slides > li").forEach(function (item, place) {
      if (place === at) { item.setAttribute("aria-current", "step"); item.scrollIntoView({ block: "center" }); }
      else item.removeAttribute("aria-current");
    });
  }

  function tick() {
    if (!speaker || speaker.closed || !stage) return;
    var minutes = Math.floor((Date.now() - began) / 60000), clock = new Date();
    speaker.document.querySelector(".speaker-clock").textContent = clock.getHours() + ":" + String(clock.getMinutes()).padStart(2, "0")
      + ", " + minutes + " min, " + (at + 1) + " / " + slides.length;
    setTimeout(tick, 1000);
  }

  /* ---- Where it begins ---- */

  main.querySelectorAll("figure[id], " + PIECES).forEach(function (figure) {
    var large = button("large", "Show large", function () { open(figure); });
    figure.insertBefore(large, figure.querySelector(":scope > .take"));
  });
  var margin = document.querySelector(".margin");
  if (margin) margin.prepend(button("present", "Present this page", function () { open(); fullScreen(); }));
  var asked = /^#present(?:=([\w-]+))?$/.exec(location.hash);
  if (asked) open(asked[1] && document.getElementById(asked[1]));
})();
