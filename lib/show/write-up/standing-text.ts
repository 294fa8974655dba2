/**
 * Parts of a write-up that are the same for every session: method, cautions, limits, references.
 *
 * @module
 */

/** Stands before the reader gets ideas. */
export const CAUTION = [
  "> **Caution: before you try this yourself**",
  ">",
  "> - Launching, towing and falling hurt people: wear a helmet, an impact vest and clothes for the water's temperature, and never go alone.",
  "> - Know the depth along the whole course, keep swimmers out of it, and follow the local rules for boats and jetties.",
  "> - A tow line under load whips back when it parts. Keep a quick release in reach and a lookout who watches the line only.",
  "> - Nothing here says that a wing will hold. Prove-load it on land first, and ask a qualified person where someone could be hurt.",
].join("\n");

/** How glides are compared. */
export const GLIDE_METHOD = [
  "**Glides.** Speed is worth height. A run that starts at $v_0$, ends at $v_1$ and loses the height $\\Delta z$ has spent the energy height",
  "",
  "$$ \\Delta H = \\Delta z + \\kappa\\,\\frac{v_0^2 - v_1^2}{2g} $$",
  "",
  "where $\\kappa$ is a little more than unity, for the water that moves along and the water that the wing pushes aside. Distance " +
  "over energy height is the run's own glide ratio. A drag law whose shape comes from the planform, and whose level is fitted " +
  "to the runs, carries every design to the same launch; there they are compared. The scatter of the runs gives the " +
  "uncertainty, and what the shape leaves in doubt is added.",
].join("\n");

/** How tows are fitted. */
export const TOW_METHOD = [
  "**Tows.** A line that rises at the angle $\\theta$ with the tension $T$ carries a little of the weight $W$, the wet volume " +
  "carries the buoyancy $B$, and the wing the rest: $L = W - B - T\\sin\\theta$. The drag is $D = T\\cos\\theta$. Forces are " +
  "fitted, not coefficients:",
  "",
  "$$ D(v) = a\\,v^2 + d + \\frac{e}{v^2}\\,\\varphi(v) $$",
  "",
  "with $\\varphi$ for the waves that a wing makes near the surface. What all readings share (the scale of the load cell, the " +
  "speed sensor, the rider's weight) does not shrink with more readings; it is carried apart, and cancels where designs were " +
  "towed in turn.",
].join("\n");

/** How takeoff is predicted. */
export const TAKEOFF_METHOD = [
  "**Takeoff.** In steady flight wing and buoyancy carry the weight, so the slowest speed is",
  "",
  "$$ v = \\sqrt{\\frac{2\\,(W - B)}{\\rho\\,S\\,C_L}} $$",
  "",
  "with $C_L$ the largest lift coefficient for the stall, and a usable share of it for takeoff. The pull follows from drag built up of " +
  "its parts. Air has no surface, no struts and no buoyancy worth the name; its density does the rest.",
].join("\n");

/** What no number on the page covers. */
export const LIMITS = [
  "- The answer holds for the riders, the water, the loads and the speeds of these runs. Waves, gusts, weed and a pumping rider are not in it.",
  "- It does not say *why* a wing is better, and nothing about strength, balance or how a wing lets go.",
  "- An interval covers what scatters and what was stated about the instruments. An error that nobody stated, and that every run shares, is not in it: the slope of the tow boat's own waves is the largest of them.",
  "- Designs that took turns share the day. Where each has a day of its own, the day may be the difference.",
  "- Whoever looks after every run and stops at the first clear answer finds differences that are not there. Write here when the number of runs was settled.",
].join("\n");

/** Works that the method rests on. */
export const REFERENCES = [
  "- JCGM 100:2008, *Guide to the expression of uncertainty in measurement*; JCGM 101:2008, *Propagation of distributions using a Monte Carlo method*.",
  '- B. L. Welch 1947, *The generalization of "Student\'s" problem when several different population variances are involved*, Biometrika 34.',
  "- J. W. Tukey 1958, *Bias and confidence in not quite large samples*, Annals of Mathematical Statistics 29.",
  "- D. York and others 2004, *Unified equations for the slope, intercept, and standard errors of the best straight line*, American Journal of Physics 72.",
  "- D. Q. Naiman 1986, *Conservative confidence bands in curvilinear regression*, Annals of Statistics 14.",
].join("\n");
