namespace ReedClinic.Domain.Bench;

/// <summary>
/// Numbers the passes: the first adjustment opens pass 1, and the first adjustment after a test opens the next one. What only makes the
/// reed ready to be played opens none: a reed that was soaked is still as it arrived (common practice).
/// </summary>
/// <remarks>
/// Only what stands is counted, by the place at which it was first said. An entry that names its pass never opens one;
/// when the pass it names is gone, it belongs where it was said.
/// </remarks>
internal sealed class PassCount
{
    private readonly List<(int Sequence, EntryId Opener)> openers = [];

    internal PassCount(IEnumerable<FactWeaver.Strand> strands)
    {
        var tested = true;
        foreach (var strand in strands.Where(strand => strand.Now is { PassId: null }))
        {
            if (strand.Now is Test)
            {
                tested = true;
            }
            else if (strand.Now is Adjustment { Prepares: false } && tested)
            {
                openers.Add((strand.Entries[0].Sequence, strand.Root));
                tested = false;
            }
        }
    }

    internal int Last => openers.Count;

    internal int Of(FactWeaver.Strand strand)
    {
        if (strand.Now?.PassId is { } named)
        {
            var index = openers.FindIndex(opener => opener.Opener.Value == named.Value);
            if (index >= 0)
            {
                return index + 1;
            }
        }

        return openers.Count(opener => opener.Sequence <= strand.Entries[0].Sequence);
    }
}
