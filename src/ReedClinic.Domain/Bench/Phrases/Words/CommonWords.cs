namespace ReedClinic.Domain.Bench.Phrases.Words;

/// <summary>Everyday words that are one letter from a word of the trade, and are not taken for it.</summary>
internal static class CommonWords
{
    private static readonly HashSet<string> Words =
    [
        .. ("form trail trial angel diary silt salt slat calm clam left felt saw was stop spot tried tired united pervert bread beard being begin lion loin sign sing wrist write quiet quite casual causal brake baker lead deal sacred scared tide tied edit diet post pots part trap tarp snap span lightest slightest highest thickest thinnest hardest should could would thought through enough brought caught bought taught might right light night tight sight fight "
        + "thinking thanks thinks thick thickly shower showed shows clapped flipped skipped tripped stripped snapped slapped "
        + "whined opener opens opinion squared squares square spin spine spiny stable table tables cable widow widows winds "
        + "minding finding binding grinding button buttons bottle mottle heard hearty beard board hearts hearth earth threat "
        + "threats thready treads spread stroked strike strikes strive strove strung strongly shoulder shoulders folder "
        + "shouldered corned cornet cornets corn sealed seated sealing ceiling seating healing dealing crowed crown crowd "
        + "crowds crows clear cleat closed clothes cloths closet closer clock blocked blade bladed blended blender blinded "
        + "scraped scrapped scraper scrappy shaped shapes shade tapped taped tapped tipped tripping clipper clippers flipping "
        + "chipped shipped chips channel chapel chattel flannel window widower little litter better butter bitter batter "
        + "letter letters later latter matter lighter fighter tighter higher hither either neither further farther father "
        + "mother other others another brother bother gather rather rathe weather whether leather feather heather sweater "
        + "freed breed greed freely really rally early nearly dearly clearly cleanly leanly plainly evenly heavenly lovely "
        + "lonely likely lively slowly lowly wholly holly hollow follow followed pillow yellow fellow mellow bellow below "
        + "dusted trusted rusted busted rested tested wasted tasted pasted basted listed lifted sifted gifted drifted "
        + "waited wanted warned earned learned leaned cleaned gleaned loaned moaned walked talked worked parked marked "
        + "marker market baked raked faked cracker stacked tracked packed backed hacked lacked pressed dressed pleased "
        + "passed massed missed kissed messed guessed crossed tossed bossed lossed losses lesson lessons lessen person "
        + "reason season poison prison raisin repeat repeats repeated defeat report reports support airport resort "
        + "spinet spiral spirit stapler stapled maples simple single double trouble couple couples coupler people "
        + "thread threads bread breaks breads broken spoken token taken shaken waken weaken quicken chicken thicken thickens "
        + "tunnel funnel tunnels tuned turned burned burner corner cornered tuner turner").Split(' '),
    ];

    internal static bool Has(string word) => Words.Contains(word);
}
