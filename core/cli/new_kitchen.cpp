#include "core/cli/new_kitchen.h"

namespace tamis::cli {

const std::string_view new_kitchen_text = R"(<?xml version="1.0" encoding="UTF-8"?>
<!-- Your kitchen, for tamis. Put it as kitchen.xml into the folder that holds your fiches: every fiche under it is
     then judged and converted by what stands here. Take out what you do not have; all but the name may go. -->
<kitchen xmlns="urn:tamis:fiche:1" name="Your kitchen" lang="en" units="metric">
  <!-- lang: the language of your fiches. units: whose cup, pint, ounce and spoon a bare name means: metric, us or
       imperial. Also: altitude="650 m", decimal="comma", eggs="grams". -->

  <!-- Ovens. mode: static (top and bottom heat), fan, deck, combi, steam. step: what the dial can be set to.
       offset: how far the chamber is from the dial, measured with a thermometer of your own. -->
  <oven id="oven" name="fan oven" mode="fan" least="50 °C" most="260 °C" step="5 °C" trays="6"/>
  <cold id="fridge" kind="fridge" at="3 °C" trays="10"/>
  <cold id="freezer" kind="freezer" at="-18 °C" trays="6"/>
  <hob id="hob" kind="gas" rings="4"/>

  <!-- Machines and vessels: the least and the most they work well with. -->
  <machine id="mixer" kind="mixer" name="bench mixer" least="0.4 l" most="4.5 l"/>

  <!-- What you measure with: figures are rounded to it. -->
  <scales reads="0.1 g" most="500 g"/>
  <scales reads="1 g" most="10 kg"/>
  <thermometer reads="1 °C"/>
  <spoons units="metric">1/4 tsp; 1/2 tsp; 1 tsp; 1 tbsp</spoons>
  <cups units="metric">1/4 cup; 1/3 cup; 1/2 cup; 1 cup</cups>

  <!-- Moulds, frames, tins. -->
  <mould id="ring-18" name="tart ring" shape="ring" count="6" diameter="18 cm" height="2 cm"/>

  <!-- People and hours. -->
  <person id="pastry" from="08:00" until="17:00" skills="pastry"/>
  <service id="dinner" from="19:00" until="22:00"/>

  <!-- What you mean by words that every house means otherwise. -->
  <means word="overnight" time="10 to 14 h"/>
  <means word="room temperature" temperature="20–22 °C"/>

  <!-- A food as you buy it. like: the food of the table that it resembles (tamis foods). Without the date of the
       supplier's specification its allergens stay assumed. -->
  <food id="our-flour" name="pastry flour, 16 kg sack" like="flour-wheat-white" density="1 cup = 125 g" pack="16 kg"/>

  <!-- How severe a rule is in your house: error, warning, advice, off. "tamis explain" lists the rules.
  <rule id="oven-mode-not-stated" severity="advice"/> -->
</kitchen>
)";

}  // namespace tamis::cli
