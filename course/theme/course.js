/* Two switches, remembered: the words (British, American) and the light (day, night). Nothing here is needed to read. */
(function () {
  "use strict";

  function remembered(name) {
    try { return localStorage.getItem(name); } catch (e) { return null; }
  }

  function remember(name, value) {
    try { localStorage.setItem(name, value); } catch (e) { /* some browsers keep nothing for files on disk */ }
  }

  var words = document.getElementById("words");
  var pairs = document.querySelectorAll("[data-us], [data-gb]");

  function speak(american) {
    pairs.forEach(function (place) {
      if (place.dataset.gb === undefined) place.dataset.gb = place.textContent;
      if (place.dataset.us === undefined) place.dataset.us = place.textContent;
      place.textContent = american ? place.dataset.us : place.dataset.gb;
    });
    words.setAttribute("aria-pressed", String(american));
    words.querySelector(".state").textContent = american ? "American" : "British";
    words.querySelector(".next").textContent = american ? "British" : "American";
  }

  words.hidden = false;
  var usual = document.documentElement.dataset.words;
  if (usual || remembered("words") === "american") speak((remembered("words") || usual) === "american");
  words.addEventListener("click", function () {
    var american = words.getAttribute("aria-pressed") !== "true";
    speak(american);
    remember("words", american ? "american" : "british");
  });

  var light = document.getElementById("light");
  var night = window.matchMedia("(prefers-color-scheme: dark)");

  function isDark() {
    var chosen = document.documentElement.dataset.light;
    return chosen ? chosen === "dark" : night.matches;
  }

  function nameLight() {
    light.querySelector(".next").textContent = isDark() ? "light" : "dark";
  }

  light.hidden = false;
  nameLight();
  night.addEventListener("change", nameLight);
  light.addEventListener("click", function () {
    var chosen = isDark() ? "light" : "dark";
    document.documentElement.dataset.light = chosen;
    remember("light", chosen);
    nameLight();
  });

  var contents = document.querySelector(".contents details");
  if (contents && window.matchMedia("(min-width: 64rem)").matches) contents.open = true;

  document.querySelectorAll(".formula, .wide, pre").forEach(function (box) {
    if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
  });
})();
