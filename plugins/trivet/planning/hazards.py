"""The closed list of hazards, each with the usual caution, what protects, who may do it, how to clean up and who must be near.

Sources: the table of cautions in the design's references, section 4 (ANSI/ISEA Z87.1 marks as the NSTA explains them; scald times of
the adult table at antiscald.com; 16 CFR 1262 on magnets; WCAG 2.3.1 on flashes; US labelling law on allergens). What has no source there
is common practice. Who must be near is our own rule, for the department to review. These are usual cautions and certify nothing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from trivet.model.hazard import SOFT_HAZARDS

POLICY = "These are usual cautions and certify nothing: follow your local code and your district's policy."
DANGER = "Anything hurt, broken, spilled, smoking or frightening goes to the nearest adult at once."

SPLASH = "splash goggles (marked D3)"
IMPACT = "impact safety glasses (marked Z87+)"


@dataclass(frozen=True, slots=True, kw_only=True)
class Hazard:
    """A hazard tag. `at_hand`: an adult must stand at the station; otherwise one must see it.

    `ask` and `listen_for` make a spot check.
    """

    tag: str
    text: str
    protect: tuple[str, ...]
    who: str
    clean_up: str
    ask: str
    listen_for: str
    at_hand: bool = False

    @property
    def soft(self) -> bool:
        """Whether a missing caution is only a warning."""
        return self.tag in SOFT_HAZARDS

    @property
    def caution(self) -> str:
        """Everything to say, in one paragraph."""
        return " ".join((self.text, self.who, self.clean_up))


_ALL = (
    Hazard(
        tag="heat",
        text=(
            "Anything above 49 °C (120 °F) burns skin: water at 60 °C (140 °F) takes about three seconds on an adult, less on a child. "
            "Hot glass and hot metal look like cold ones. Cords lie where nobody can catch them."
        ),
        protect=("heat-proof mitts", f"{SPLASH} where liquid can splash"),
        who="An adult pours, lifts and carries whatever is hotter than that.",
        clean_up="Leave hot things where they stand until an adult says they are cool.",
        at_hand=True,
        ask="Show me what here may be hot. How do you treat it?",
        listen_for="treats it as hot even if it looks cold; the adult pours and lifts; a burn goes to the nearest adult at once",
    ),
    Hazard(
        tag="open flame",
        text=(
            "Hair is tied back, sleeves are rolled, and nothing that burns lies within an arm's length. "
            "Everyone knows where the extinguisher and the fire blanket are."
        ),
        protect=(SPLASH, "hair tied back, no loose sleeves"),
        who="Only an adult lights, moves or puts out a flame.",
        clean_up="An adult checks that every flame is out and the gas or the lighter is put away.",
        at_hand=True,
        ask="The flame is lit. What do you keep away from it, and who may touch the burner?",
        listen_for="hair, sleeves, paper; only the adult; smoke or fire goes to the nearest adult at once",
    ),
    Hazard(
        tag="glass",
        text=(
            "Look for chips and cracks before you start, and keep glass away from the edge. Only heat-proof (borosilicate) glass is heated."
        ),
        protect=("safety glasses", "closed shoes"),
        who="Nobody picks up broken glass by hand: step back and call the nearest adult.",
        clean_up="An adult sweeps broken glass into the box for broken glass.",
        ask="Show me what you do if a glass breaks.",
        listen_for="hands off, step back, tell the nearest adult at once; an adult sweeps it up",
    ),
    Hazard(
        tag="sharp",
        text="Cut on a board and away from hands and bodies. Points are carried down, with a clear zone around whoever cuts.",
        protect=(IMPACT,),
        who="Blades are handed out by an adult.",
        clean_up="Count blades, pins and needles out and back in.",
        ask="Show me how you hold and carry the sharp tool.",
        listen_for="point down, cuts away from the body, clear zone; a cut goes to the nearest adult at once",
    ),
    Hazard(
        tag="chemical",
        text=(
            "For whatever carries a hazard statement on its label: read the label and the supplier's safety data sheet before the lesson. "
            "Never taste, and never smell straight from the bottle. An eyewash is within reach."
        ),
        protect=(SPLASH, "gloves where the safety data sheet asks for them"),
        who="Students handle only what the safety data sheet and your district allow at their age.",
        clean_up="Waste goes where the safety data sheet says, not down the sink by habit. Everyone washes hands.",
        at_hand=True,
        ask="What do you wear for this chemical, and what do you do if some gets on you?",
        listen_for="goggles on before it is opened; rinse with much water and tell the nearest adult at once",
    ),
    Hazard(
        tag="biological",
        text="Treat pond water, soil and living things as dirty. Nothing goes near the mouth; filtered water is not drinking water.",
        protect=("gloves, or hands washed right after", "cuts covered"),
        who="Students with open cuts do not handle it.",
        clean_up="Wipe the table with the cleaner your school uses. Everyone washes hands with soap.",
        ask="What do you do with your hands while you work and when you have finished?",
        listen_for="away from mouth and eyes; gloves or soap and water afterward",
    ),
    Hazard(
        tag="electricity",
        text="Batteries only, 9 V or less, never the wall outlet. Hands and table are dry. A wire from pole to pole gets hot.",
        protect=("dry hands and a dry table",),
        who="Only an adult touches anything that plugs into the wall.",
        clean_up="Disconnect between trials, and take every circuit apart at the end.",
        ask="Show me what you check before you connect the battery.",
        listen_for=(
            "dry hands, no wire straight from pole to pole; disconnects between trials; "
            "anything hot or smoking goes to the nearest adult at once"
        ),
    ),
    Hazard(
        tag="battery",
        text=(
            "A swallowed button cell is an emergency: button cells stay in holders closed with a screw, and none lies loose. "
            "Nobody opens, heats or shorts a battery."
        ),
        protect=("a count before and after",),
        who="An adult changes button cells.",
        clean_up="Count batteries out and back in; tape the poles of empty ones.",
        ask="How many batteries did you get, and what do you do if one is missing or gets hot?",
        listen_for="says the number; tells the nearest adult at once",
    ),
    Hazard(
        tag="magnet",
        text=(
            "Two swallowed magnets are an emergency, and magnets sold to schools are exempt from the federal rule on strength. "
            "Keep them from mouths, phones, cards and medical devices. Strong ones pinch fingers."
        ),
        protect=("a count before and after",),
        who="Loose magnets small enough to swallow stay with an adult.",
        clean_up="Count magnets out and back in before anyone leaves the station.",
        ask="How many magnets did you get, and what do you keep them away from?",
        listen_for="says the number; mouth, phones, medical devices; a missing one goes to the nearest adult at once",
    ),
    Hazard(
        tag="projectile",
        text="Anything that flies, springs or is stretched: a clear lane, nobody in front, and a spoken signal before each launch.",
        protect=(f"{IMPACT} for everyone within reach",),
        who="Nobody launches until the adult at the station has seen the lane.",
        clean_up="Release every spring and band before you put it away.",
        at_hand=True,
        ask="Show me where people stand when you launch. What do you say first?",
        listen_for="behind the launcher, lane clear, glasses on, signal spoken",
    ),
    Hazard(
        tag="pressure",
        text="Nothing that builds up pressure is sealed, heated or pointed at anyone, and it opens away from faces.",
        protect=(f"{IMPACT} for everyone within reach",),
        who="Only the adult at the station pumps up, seals or opens it.",
        clean_up="An adult lets the pressure out before anything is put away.",
        at_hand=True,
        ask="Where does the pressure go when it is let out, and who lets it out?",
        listen_for="away from faces; the adult at the station",
    ),
    Hazard(
        tag="light",
        text="Nobody looks at the Sun, into a strong lamp or into a laser, nor at one in a mirror. Lasers are class 2 or below.",
        protect=("beams below eye level, no mirrors in their way",),
        who="Only an adult holds a laser.",
        clean_up="Lamps are hot after use: let them cool before you put them away.",
        ask="Show me where the light may go and where it may not.",
        listen_for="never toward eyes; below eye level; an adult holds a laser",
    ),
    Hazard(
        tag="sound",
        text="Loud sound is kept short and low enough to talk over.",
        protect=("ear protection for whoever wants it",),
        who="Whoever finds it too loud may step away without asking.",
        clean_up="Turn the volume down before you switch off.",
        ask="How do you know that the sound is too loud?",
        listen_for="cannot talk over it, or someone is uncomfortable; turn it down",
    ),
    Hazard(
        tag="strobe",
        text=(
            "No more than three flashes in a second. "
            "Say beforehand that there will be flashing light, and offer the other task to everyone."
        ),
        protect=("a flash rate of three a second or less",),
        who="Only an adult sets the rate.",
        clean_up="Switch the flashing off before groups change places.",
        ask="What do you do if the flashing bothers you or someone near you?",
        listen_for="look away, leave, tell the nearest adult at once; nobody has to say why",
    ),
    Hazard(
        tag="allergen",
        text=(
            "Read every label: milk, egg, fish, shellfish, tree nuts, peanuts, wheat, soy, sesame, and latex in balloons and gloves. "
            "What the class avoids is replaced for the whole class, so that nobody is singled out."
        ),
        protect=("materials without what the class avoids",),
        who="Nobody has to say why a material is not for them.",
        clean_up="Wipe tables and wash hands before the next group comes.",
        ask="What do you do with your hands before you leave this station, and why?",
        listen_for="wash them, so that nothing travels; feeling unwell goes to the nearest adult at once",
    ),
    Hazard(
        tag="food",
        text="Nothing in a science room is tasted, eaten or drunk, not even food.",
        protect=("clean hands",),
        who="An adult keeps food for experiments apart from food to eat.",
        clean_up="Throw away what was used. Everyone washes hands.",
        ask="This looks good enough to eat. What is our rule?",
        listen_for="nothing is tasted here; hands washed afterward",
    ),
    Hazard(
        tag="spill",
        text="A wet floor is slippery. The floor is dry before groups change places.",
        protect=("paper towels at the station",),
        who="The team wipes up water; for anything else step back and call the nearest adult.",
        clean_up="Wipe up at once, and the materials manager looks at the floor.",
        ask="Show me where the towels are. What do you do if something spills?",
        listen_for="water: wipe it up at once, floor dry; anything else: step back, nearest adult at once",
    ),
    Hazard(
        tag="lifting",
        text="Heavy things stand low and are moved by two people with bent knees.",
        protect=("closed shoes",),
        who="An adult moves what two students cannot lift easily.",
        clean_up="Heavy things go back first, while the way is clear.",
        ask="How does your team move the heavy part?",
        listen_for="two people, bent knees, clear way, or asks an adult",
    ),
    Hazard(
        tag="small parts",
        text="Small parts stay on the tray, off the floor and away from mouths.",
        protect=("a tray, and a count before and after",),
        who="The materials manager counts them.",
        clean_up="Count them back in before anyone leaves the station.",
        ask="How many parts did you get, and what do you do if one is missing?",
        listen_for="says the number; looks on the floor first, then tells an adult",
    ),
)

HAZARDS: Mapping[str, Hazard] = {hazard.tag: hazard for hazard in _ALL}
"""By tag, in the order in which cautions are printed (that of model.hazard.HAZARDS)."""
