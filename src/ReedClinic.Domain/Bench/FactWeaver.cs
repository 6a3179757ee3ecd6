namespace ReedClinic.Domain.Bench;

/// <summary>Links entries into facts, and says of each entry that can't be linked why not.</summary>
internal sealed class FactWeaver
{
    private readonly Dictionary<EntryId, Strand> strandOf = [];
    private readonly Dictionary<EntryId, EntryStanding> outside = [];
    private readonly List<Strand> strands = [];

    private FactWeaver(IReadOnlyList<BenchEntry> entries) => Entries = entries;

    /// <summary>Every entry once, in the order of the log.</summary>
    internal IReadOnlyList<BenchEntry> Entries { get; }

    internal IReadOnlyList<Strand> Strands => strands;

    internal static FactWeaver Weave(IEnumerable<BenchEntry> entries)
    {
        // The order of the log is the order of its sequence; the id settles what can't happen in a stored log.
        var weaver = new FactWeaver(
        [
            .. entries.OrderBy(entry => entry.Sequence).ThenBy(entry => entry.Id.Value).DistinctBy(entry => entry.Id),
        ]);
        HashSet<People.OperationId> seen = [];
        foreach (var entry in weaver.Entries)
        {
            if (!seen.Add(entry.OperationId))
            {
                weaver.outside[entry.Id] = EntryStanding.Repeat;
            }
            else
            {
                weaver.Add(entry);
            }
        }

        return weaver;
    }

    internal Strand? StrandOf(EntryId id) => strandOf.GetValueOrDefault(id);

    internal EntryStanding? WhyOutside(EntryId id) => outside.TryGetValue(id, out var why) ? why : null;

    private void Add(BenchEntry entry)
    {
        if (entry.Supersedes is not { } target)
        {
            if (entry is Undo)
            {
                outside[entry.Id] = EntryStanding.NothingToTakeBack;
                return;
            }

            var strand = new Strand(entry);
            strands.Add(strand);
            strandOf[entry.Id] = strand;
        }
        else if (Hindrance(entry, target) is { } why)
        {
            outside[entry.Id] = why;
        }
        else
        {
            strandOf[target].Add(entry);
            strandOf[entry.Id] = strandOf[target];
        }
    }

    private EntryStanding? Hindrance(BenchEntry entry, EntryId target)
    {
        if (!strandOf.TryGetValue(target, out var strand))
        {
            return outside.ContainsKey(target)
                ? EntryStanding.FollowsWhatDoesNotCount
                : EntryStanding.NothingToReplace;
        }

        if (strand.Entries[^1].Id != target)
        {
            return EntryStanding.CameSecond;
        }

        return MayReplace(strand.Now ?? strand.Entries[0], entry) ? null : EntryStanding.ReplacesAnotherKind;
    }

    /// <summary>Whether an entry may be a better wording of another: what was misheard as a remark may have been work.</summary>
    /// <remarks>Advice that was set aside and a word on a likely cause are no wordings of what was said about the reed.</remarks>
    internal static bool MayReplace(BenchEntry before, BenchEntry after) =>
        after is Undo || after.Kind == before.Kind || !(IsOfItsOwn(before) || IsOfItsOwn(after));

    private static bool IsOfItsOwn(BenchEntry entry) => entry is AdviceSetAside or CauseJudged;

    /// <summary>The entries of one fact, and the wordings that have not been taken back: the last of these stands.</summary>
    internal sealed class Strand
    {
        private readonly List<BenchEntry> entries = [];
        private readonly Stack<BenchEntry> wordings = new();
        private readonly Dictionary<EntryId, EntryStanding> undone = [];

        internal Strand(BenchEntry first) => Add(first);

        internal IReadOnlyList<BenchEntry> Entries => entries;

        internal EntryId Root => entries[0].Id;

        internal BenchEntry? Now => wordings.TryPeek(out var wording) ? wording : null;

        internal FactState State => Now switch
        {
            null => FactState.TakenBack,
            { } wording when wording.Id == Root => FactState.Live,
            _ => FactState.Corrected,
        };

        internal void Add(BenchEntry entry)
        {
            entries.Add(entry);
            if (entry is not Undo)
            {
                wordings.Push(entry);
            }
            else if (wordings.TryPop(out var takenBack))
            {
                undone[takenBack.Id] = EntryStanding.TakenBack;
                undone[entry.Id] = EntryStanding.TakesBack;
            }
            else
            {
                undone[entry.Id] = EntryStanding.NothingToTakeBack;
            }
        }

        internal EntryStanding StandingOf(BenchEntry entry)
        {
            if (undone.TryGetValue(entry.Id, out var standing))
            {
                return standing;
            }

            return Now?.Id == entry.Id ? EntryStanding.Stands : EntryStanding.Corrected;
        }
    }
}
