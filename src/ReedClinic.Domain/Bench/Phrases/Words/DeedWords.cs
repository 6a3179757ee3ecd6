namespace ReedClinic.Domain.Bench.Phrases.Words;

/// <summary>Verbs of the bench: each with its bare form, past, participle and -ing form.</summary>
internal static class DeedWords
{
    internal const string Verbs = """
        scrape: thin thinned thinned thinning, scrape scraped scraped scraping, shave shaved shaved shaving, skim skimmed skimmed skimming, ease eased eased easing, lighten lightened lightened lightening, reduce reduced reduced reducing, relieve relieved relieved relieving, scratch scratched scratched scratching, whittle whittled whittled whittling, pare pared pared paring, brush brushed brushed brushing, graze grazed grazed grazing, weaken weakened weakened weakening, slim slimmed slimmed slimming, stroke stroked stroked stroking, remove removed removed removing, trim trimmed trimmed trimming, work worked worked working, touch touched touched touching, refine refined refined refining, thin_out thinned_out thinned_out thinning_out, carve carved carved carving, plane planed planed planing, lick licked licked licking, soften softened softened softening, tickle tickled tickled tickling, scoop scooped scooped scooping, excavate excavated excavated excavating, chase chased chased chasing, rasp rasped rasped rasping, nibble nibbled nibbled nibbling, chisel chiselled chiselled chiselling, sculpt sculpted sculpted sculpting, fine_tune fine_tuned fine_tuned fine_tuning, tidy tidied tidied tidying, dig dug dug digging, nurse nursed nursed nursing, drop dropped dropped dropping, slice sliced sliced slicing
        take: take took taken taking, bring brought brought bringing, get got got getting, lift lifted lifted lifting, knock knocked knocked knocking, shift_off shifted_off shifted_off shifting_off, peel peeled peeled peeling
        light: give gave given giving, do did done doing, go went gone going, put put put putting, make made made making, have had had having, add added added adding, pass passed passed passing, apply applied applied applying
        dust: dust dusted dusted dusting, feather feathered feathered feathering, flick flicked flicked flicking
        clip: clip clipped clipped clipping, snip snipped snipped snipping, nip nipped nipped nipping, crop cropped cropped cropping, cut cut cut cutting, chop chopped chopped chopping, micro_clip micro_clipped micro_clipped micro_clipping, reclip reclipped reclipped reclipping
        blend: blend blended blended blending, integrate integrated integrated integrating, melt melted melted melting, merge merged merged merging, graduate graduated graduated graduating, ramp ramped ramped ramping
        smooth: smooth smoothed smoothed smoothing, even_out evened_out evened_out evening_out, iron ironed ironed ironing
        define: define defined defined defining, sharpen sharpened sharpened sharpening, deepen deepened deepened deepening, set_off set_off set_off setting_off, separate separated separated separating, mark marked marked marking, outline outlined outlined outlining
        lengthen: lengthen lengthened lengthened lengthening, extend extended extended extending, run ran run running, stretch stretched stretched stretching
        open: open opened opened opening_v, open_up opened_up opened_up opening_up, widen widened widened widening, hollow hollowed hollowed hollowing
        squeeze: squeeze squeezed squeezed squeezing, pinch pinched pinched pinching
        press: press pressed pressed pressing, flatten flattened flattened flattening, close closed closed closing, squash squashed squashed squashing
        free: free freed freed freeing, loosen loosened loosened loosening, release released released releasing, unlock unlocked unlocked unlocking, clear cleared cleared clearing
        narrow: narrow narrowed narrowed narrowing
        even: even evened evened evening, balance balanced balanced balancing, equalise equalised equalised equalising, match_up matched_up matched_up matching_up, even_up evened_up evened_up evening_up
        square: square squared squared squaring, straighten straightened straightened straightening, true trued trued truing
        offset: offset offset offset offsetting, level levelled levelled levelling, stagger staggered staggered staggering
        soak: soak soaked soaked soaking, wet wetted wetted wetting, dampen dampened dampened dampening, dip dipped dipped dipping, moisten moistened moistened moistening, resoak resoaked resoaked resoaking, rewet rewetted rewetted rewetting, re_soak re_soaked re_soaked re_soaking
        dry: dry dried dried drying, rest rested rested resting
        wait: wait waited waited waiting, set_aside set_aside set_aside setting_aside, put_aside put_aside put_aside putting_aside
        clean: clean cleaned cleaned cleaning, swab swabbed swabbed swabbing, rinse rinsed rinsed rinsing, wipe wiped wiped wiping, flush flushed flushed flushing
        draw: draw drew drawn drawing, suck sucked sucked sucking
        round: round rounded rounded rounding
        bend: bend bent bent bending, tighten tightened tightened tightening, nudge nudged nudged nudging
        seal: seal sealed sealed sealing, wrap wrapped wrapped wrapping, tape taped taped taping, wax waxed waxed waxing, varnish varnished varnished varnishing, lacquer lacquered lacquered lacquering
        realign: set set set setting, realign realigned realigned realigning, align aligned aligned aligning, push pushed pushed pushing, twist twisted twisted twisting, slide slid slid sliding, shift shifted shifted shifting, move moved moved moving, re_align re_aligned re_aligned re_aligning, reset reset reset resetting, coax coaxed coaxed coaxing, tease teased teased teasing, turn turned turned turning
        burnish: burnish burnished burnished burnishing, polish polished polished polishing, buff buffed buffed buffing, rub rubbed rubbed rubbing
        fit: fit fitted fitted fitting, refit refitted refitted refitting, replace replaced replaced replacing, recork recorked recorked recorking, re_cork re_corked re_corked re_corking, change changed changed changing, renew renewed renewed renewing
        tie: tie tied tied tying, retie retied retied retying, re_tie re_tied re_tied re_tying, rebind rebound rebound rebinding, rewind rewound rewound rewinding, untie untied untied untying, bind bound bound binding_v, rewrap rewrapped rewrapped rewrapping
        retire: retire retired retired retiring, bin binned binned binning, scrap scrapped scrapped scrapping, discard discarded discarded discarding
        sand: sand sanded sanded sanding, file filed filed filing, abrade abraded abraded abrading
        other: tuck tucked tucked tucking, glue glued glued gluing, wind wound wound winding_v, fix fixed fixed fixing, stick stuck stuck sticking, warm warmed warmed warming, mend mended mended mending, repair repaired repaired repairing, adjust adjusted adjusted adjusting, lay laid laid laying, fill filled filled filling, pull pulled pulled pulling, use used used using, slip slipped_v slipped_v slipping_v
        harm: nick nicked nicked nicking, tear tore torn tearing, gouge gouged gouged gouging, chip chipped chipped chipping, crack cracked cracked cracking, ruin ruined ruined ruining, spoil spoiled spoiled spoiling, break broke broken breaking, split split split splitting, overdo overdid overdone overdoing, overscrape overscraped overscraped overscraping, damage damaged damaged damaging, cut_into cut_into cut_into cutting_into, go_through went_through gone_through going_through, go_too_far went_too_far gone_too_far going_too_far, snap snapped snapped snapping, slip_with slipped_with slipped_with slipping_with, dent dented dented denting, score scored scored scoring, scrape_through scraped_through scraped_through scraping_through, slip_and slipped_and slipped_and slipping_and
        keepoff: avoid avoided avoided avoiding, spare spared spared sparing
        """;

    internal const string Table = """
        Thing fishskin: fishskin, fish skin, goldbeater's skin, goldbeaters skin, skin round, film, cling film, tape, ptfe tape, plumber's tape, teflon tape, sealing film, beeswax on the sides
        Thing wax: wax, beeswax, varnish, lacquer, nail varnish, shellac
        Thing abrasive: fine paper, fine file, file, nail file, abrasive paper, fine abrasive, abrasive, sandpaper, sand paper, emery, emery paper, wet and dry, wet and dry paper, micro mesh, micro abrasive, polishing paper, finishing paper, rush, fine grit, grit, abrasive film, finest paper
        Thing swab: feather, pipe cleaner, wet feather, rolled paper, paper strip, strip of paper, slip of paper
        Thing abrasive: file
        Thing mandrel: mandrel, pin
        Thing pliers: pliers, plier
        Thing block: block, billet, cutting block
        Thing air: air
        Thing case: case, reed case, box
        Stroke stroke: stroke, strokes, scrapes, pass of the knife, passes of the knife, light strokes, light stroke, knife strokes
        Mm mm: mm, millimetre, millimetres, mil, mils, mill, millimeter, millimeters
        Tenth tenth: tenth, tenths, tenth of a millimetre, tenths of a millimetre, tenth of a mm, tenths of a mm, tenth of a mil, tenths of a mil
        Hundredth hundredth: hundredth, hundredths, hundredths of a millimetre, hundredth of a millimetre
        Off off: off, away from, from, down, out of
        More more: more, further, another, extra, additional
        Again again: again, once more, one more time, another time, same again, ditto, and again, repeat, repeated, repeat that, the same again, one more, another one, same thing again, do that again, did that again, did it again, done it again, and once more, another go
        Same same: same on, same for, same thing on, same to, likewise on, the same with, same with, same there, ditto on, ditto for, likewise, same for the, same thing to, same treatment, same dose, same for, same too, did the same, same, so too, same thing for, same now on, same amount, exactly same, did same
        Also also: too, as well, also, likewise too, and also, and the
        """;
}
