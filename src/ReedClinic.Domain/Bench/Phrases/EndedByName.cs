using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“That hump’s gone”, “bump’s out”, “no more hiss”: what is gone by another name is what stands in the log of that sort; where nothing of it stands, no finding ends.</summary>
internal static class EndedByName
{
    // What is said to be gone, and the findings that may have been called so.
    private static readonly (string[] Names, string[] Kinds)[] Sorts =
    [
        (["bump", "bumps", "lump", "lumps", "hump", "humps", "ridge", "ridges", "bulge", "bulges", "knob", "knobble", "mound", "swelling", "ledge", "hillock"], ["bumps", "step-abrupt", "heart-thick"]),
        (["step", "cliff", "wall"], ["step-abrupt", "bumps"]),
        (["hiss", "hissing", "leak", "leaks", "whistle", "whistling", "daylight", "draught"], ["side-leak", "thread-leak"]),
        (["imbalance", "unevenness", "difference", "inequality", "lopsidedness", "mismatch"], ["left-right-uneven", "blades-uneven", "windows-uneven", "heart-lopsided", "opening-lopsided", "tip-line-slanted"]),
        (["slant", "slope", "skew", "tilt"], ["tip-line-slanted", "crooked-on-staple"]),
        (["gunk", "dirt", "fluff", "muck", "grime", "lint", "debris", "crud"], ["dirty-inside"]),
        (["fuzz", "fray", "fraying", "burr", "burrs", "raggedness", "whiskers"], ["tip-edge-ragged"]),
        (["bark", "patch", "speck", "fleck", "island", "spot"], ["bark-island", "bumps"]),
        (["crack", "split", "hairline"], ["tip-cracked", "body-cracked"]),
        (["thickness", "stiffness"], ["tip-thick", "tip-corners-thick", "heart-thick", "heart-sides-thick", "back-thick"]),
    ];

    private static readonly HashSet<string> Known = [.. Sorts.SelectMany(sort => sort.Names)];

    private static readonly HashSet<string> Lead = [.. "the that this those these my your its and so but now also then all again of a bit little last old other solo whole high thick yes yep ah oh good hooray right ok okay well finally at".Split(' ')];

    private static readonly HashSet<string> Link = [.. "'s is are was were has have had been all now just quite completely entirely altogether finally seems looks properly totally pretty much well and truly".Split(' ')];

    private static readonly HashSet<string> Gone = ["gone", "out", "off", "away", "vanished", "disappeared", "went", "sorted", "cured", "fixed"];

    private static readonly HashSet<string> Tail = [.. "now too again for good as well altogether completely entirely i think at last thank goodness that then away inside on in of the a bit".Split(' ')];

    private static readonly Doubt Renamed = new("kind", "taken for what was found before in other words");

    private static readonly Doubt Which = new("kind", "more than one finding may be meant: the last one was taken");

    private static readonly Doubt Unknown = new("kind", "nothing of that name was found before, so it is kept as a note: which finding is gone?");

    internal static void Keep(Course course)
    {
        for (var at = 0; at < course.Segments.Count; at++)
        {
            if (course.Segments[at] is not { Asked: false } segment || Said(segment) is not { } noun)
            {
                continue;
            }

            var sorts = Sorts.Where(known => known.Names.Contains(noun)).ToList();
            var sort = sorts.SelectMany(known => known.Kinds).ToList();
            var open = Open(course, sort, [.. sorts.SelectMany(known => known.Names)], PlaceReader.Read(segment).Find(mention => mention.HasPlace && !Known.Contains(segment.Word(mention.First))));
            var over = course.Drafts.Find(draft => draft.Head == at);
            if (over is { Kind: EntryKind.FindingEnded, Slots.Kind: { } kind } && open.Contains(kind) && (sort.Contains(kind) || open[0] == kind))
            {
                continue;
            }

            if (open.Count > 0 && Entry(course, at) is { } draft)
            {
                draft.Kind = EntryKind.FindingEnded;
                draft.Slots = new ReadSlots { Kind = open[0], Ending = FindingEnding.Gone };
                draft.Doubts.Clear();
                draft.Doubts.Add(open.Count > 1 ? Which : Renamed);
            }
            else if (open.Count == 0 && over is { Kind: EntryKind.FindingEnded } && course.Before.Last is not null && !(over.Slots.Kind is { } named && EndedReader.WasFound(course, named) && sort.Contains(named)))
            {
                Spoken.Unmake(over, Unknown);
            }
        }
    }

    // An entry of these words alone, whatever it was taken for; work that was done stays work.
    private static Draft? Entry(Course course, int at) => course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is { Kind: EntryKind.Adjustment or EntryKind.Stopped or EntryKind.Verdict or EntryKind.Risk or EntryKind.RiskClosed or EntryKind.LookedFor } over && over.Head == at ? null : Alone.Of(course, at);

    // What stands of it, the last first: one that was called so in its own words before any other.
    private static List<string> Open(Course course, List<string> sort, HashSet<string> names, Mention? place)
    {
        var standing = course.Before.Log.Findings.Where(now => now.Ended is null && now.Finding.Character is FindingCharacter.Fault && IsThere(now.Finding.Zone, place)).Select(now => now.Finding).Reverse().ToList();
        var called = standing.Where(finding => Tokenizer.Cut(finding.Said ?? finding.Words ?? "").Exists(token => names.Contains(token.Text))).Select(finding => finding.FindingKind.Value).Distinct().ToList();
        return called.Count > 0 ? called : [.. standing.Select(finding => finding.FindingKind.Value).Where(sort.Contains).Distinct()];
    }

    private static bool IsThere(Zone zone, Mention? place) => place?.Usual is not { } said || said == zone || zone is Zone.WholeReed || PlaceReader.Of(said) is { Length: > 0 } region && region == PlaceReader.Of(zone);

    // “Solo bump’s gone”, “that hump is out now”, “no more hiss”: the name of it, and that it is gone.
    private static string? Said(Segment segment)
    {
        if (!Spoken.HasAny(segment, Known))
        {
            return null;
        }

        var words = Enumerable.Range(segment.First, segment.End - segment.First).Where(at => segment.Tokens[at].Kind is not TokenKind.Break && segment.Word(at).Length > 0 && !segment.Covered(at, Cat.Filler)).ToList();
        var noun = words.FindIndex(at => Known.Contains(segment.Word(at)));
        if (noun < 0)
        {
            return null;
        }

        var name = segment.Word(words[noun]);
        if (noun is >= 2 && segment.Word(words[noun - 1]) is "more" && segment.Word(words[noun - 2]) is "no" && words.Skip(noun + 1).All(at => Tail.Contains(segment.Word(at)) || IsPlace(segment, at)))
        {
            return name;
        }

        var end = words.FindIndex(noun + 1, at => Gone.Contains(segment.Word(at)));
        return end > noun && !segment.Has(Cat.Not) && !segment.Has(Cat.Plan) && !segment.Has(Cat.Cond) && !segment.Has(Cat.May)
            && words.Take(noun).All(at => Lead.Contains(segment.Word(at)) || IsPlace(segment, at))
            && words.Skip(noun + 1).Take(end - noun - 1).All(at => Link.Contains(segment.Word(at)) || segment.Word(at) is "in" or "on" or "at" or "of" or "the" or "behind" || Known.Contains(segment.Word(at)) || IsPlace(segment, at))
            && words.Skip(end + 1).All(at => Tail.Contains(segment.Word(at)) || Link.Contains(segment.Word(at))) ? name : null;
    }

    private static bool IsPlace(Segment segment, int at) => segment.Items.Any(item => item.First <= at && at < item.End && item.Cat is Cat.Zone or Cat.Region or Cat.Part or Cat.Side or Cat.Blade);
}
