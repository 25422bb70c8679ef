/* Moves the pictures of sounds: a line at the moment that is heard, and the pitches of that moment. All of it is in the page. */
(function () {
  "use strict";

  var still = window.matchMedia("(prefers-reduced-motion: reduce)");

  /* The picture's shades are its data: one column for each moment, one row for each pitch, from the highest down. */
  function shades(picture, ready) {
    var image = new Image();
    image.onload = function () {
      var canvas = document.createElement("canvas");
      canvas.width = image.width;
      canvas.height = image.height;
      var pen = canvas.getContext("2d", { willReadFrequently: true });
      pen.drawImage(image, 0, 0);
      ready(pen.getImageData(0, 0, image.width, image.height));
    };
    image.src = picture.querySelector("image").getAttribute("href");
  }

  function follow(figure, audio, picture) {
    var now = picture.querySelector(".heard-now"), pitches = picture.querySelector(".heard-pitches");
    var held = figure.querySelector(".hold input"), size = picture.dataset, data = null, drawn = -1;
    var left = +size.left, across = size.right - size.left, foot = +size.foot, high = size.foot - size.top;

    function moving() { return held.checked === still.matches; }

    function show() {
      var part = Math.min(audio.currentTime / size.seconds, 1);
      now.removeAttribute("hidden");
      now.setAttribute("transform", "translate(" + (left + across * part) + " 0)");
      if (!data) return;
      var column = Math.min(Math.floor(part * data.width), data.width - 1), points = [];
      if (column === drawn) return;
      drawn = column;
      for (var row = 0; row < data.height; row++) {
        var grey = data.data[4 * ((data.height - 1 - row) * data.width + column)];
        points.push((left + across * row / (data.height - 1)).toFixed(1) + "," + (foot - high * grey / 255).toFixed(1));
      }
      pitches.setAttribute("points", points.join(" "));
    }

    function go() {
      if (audio.paused || audio.ended) return;
      if (moving()) show();
      requestAnimationFrame(go);
    }

    audio.addEventListener("play", function () {
      if (!data) shades(picture, function (found) { data = found; show(); });
      go();
    });
    ["pause", "seeked", "ended"].forEach(function (event) { audio.addEventListener(event, show); });
  }

  document.querySelectorAll(".heard svg").forEach(function (picture) {
    var figure = picture.closest(".heard");
    follow(figure, figure.querySelector("audio"), picture);
  });
})();
