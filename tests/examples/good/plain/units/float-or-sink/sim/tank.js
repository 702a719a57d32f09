document.getElementById("drop").addEventListener("click", () => {
  document.getElementById("result").textContent = "It floats.";
});
