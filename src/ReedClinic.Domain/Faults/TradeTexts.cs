namespace ReedClinic.Domain.Faults;

/// <summary>Published texts of the trade from which a statement was taken, in our own words.</summary>
internal static class TradeTexts
{
    internal const string TeachingHandbook =
        "Colwell, Hewitt & Fonder, The Teaching of Instrumental Music, 5th ed., oboe chapter";

    internal const string TeachingHandbookBassoon =
        "Colwell & Hewitt, The Teaching of Instrumental Music, earlier ed., bassoon chapter, p. 169";

    internal const string ReedPrinciples = "“Principles of Reedmaking”, Bandworld magazine";

    internal const string ReedDefinitions = "oboeinsight.com, reed definitions";

    internal const string ReedFixes = "oboeinsight.com, adjustments and fixes";

    internal const string Sealing = "oboeinsight.com, 3 September 2008";

    internal const string TwoIdeasOnPitch = "woodwind.org forum, message 12801";

    internal const string ClosingPattern = "woodwind.org forum, message 23926";

    internal const string BlendAndHeart = "woodwind.org forum, message 23844";

    internal const string ClosingInPlay = "woodwind.org forum, message 2485";

    internal const string Soaking = "woodwind.org forum, message 6810";

    internal const string PartsOfTheReed = "magazine page on the parts of the reed, scribd.com/doc/137812945";

    internal const string CorkAdvice = "geocities mirror, double-reed notes, reeds page";

    internal const string TipLevels = "player's article on blades of different lengths, 2016";

    internal const string ClearTip = "player's article on sharp reeds brought down, 2012";

    internal const string WornReeds = "maker's list of signs that a reed is finished";

    internal const string LeakCauses = "maker's list of causes of leaks";

    internal const string PaperCleaning = "teacher's page on cleaning with rolled paper";
}
