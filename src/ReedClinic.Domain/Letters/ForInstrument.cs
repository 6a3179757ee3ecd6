using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>What is taught of an oboe’s reed, said for an instrument whose reed goes on a crook and has no cork. Common practice.</summary>
internal static class ForInstrument
{
    private static readonly (string Oboe, string Crook)[] Words =
    [
        ("into the instrument", "on to the crook"),
        ("by the cork", "by the thread"),
        ("the cork end", "the lower end"),
    ];

    /// <summary>A sentence as it fits.</summary>
    /// <param name="sentence">The sentence, said of an oboe.</param>
    /// <param name="instrument">What the reeds are for; an oboe when nobody said.</param>
    public static string Said(string sentence, Instrument? instrument) => instrument is null or Instrument.Oboe
        ? sentence
        : Words.Aggregate(sentence, (said, pair) => said.Replace(pair.Oboe, pair.Crook, StringComparison.Ordinal));
}
