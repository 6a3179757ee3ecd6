using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What was done, by its lasting name.</summary>
internal static class DeedKind
{
    private static readonly HashSet<string> Small = ["hair", "tiniest", "touch", "little", "bit", "tad", "whisker", "smidgen", "smidge", "fraction", "shade", "sliver", "trifle", "slightest", "smallest", "tiny", "breath", "wisp", "thought", "lightest", "barest", "shaving", "slightly", "merest", "speck", "crumb", "barely", "trace", "hint", "mite", "jot", "whit", "fractionally", "minutely", "ghost", "atom", "iota", "particle", "minute", "teeny", "faintest", "finest", "gentlest", "peeling", "notch", "marginally", "minimally", "small", "marginal", "weeniest", "weeny"];

    /// <summary>Whether words of amount make a clip a hair.</summary>
    internal static bool IsSmall(SaidAmount? amount) => amount switch
    {
        { Mm: { } mm } => mm < 0.3m,
        { Words: { } words } => words.Split(' ').Any(Small.Contains),
        _ => false,
    };

    internal static string Of(DeedParts deed)
    {
        if (IsUndone(deed))
        {
            return "something-else";
        }

        if (deed.Object is null && deed.Part is not "centre" && (deed.Side is not null || deed.Blade is not null) && deed.Action is "take" or "scrape" or "light" or "even" && IsToMatch(deed))
        {
            return "even-up";
        }

        var segment = deed.Segment;
        var action = deed.Action ?? (deed.Thing is not null || deed.Object?.Zone is Zone.Cork or Zone.Wire ? "light" : segment.HasWord("dusting") ? "dust" : "take");
        if (OfEnds(deed, action) is { } ends)
        {
            return ends;
        }

        var trims = (segment.HasWord("trimmed") || segment.HasWord("trim") || segment.HasWord("trimming")) && deed.Target?.Region is "tip" or null && deed.Object?.Zone is null && deed.Part is null;
        if (action is "clip" && deed.Object?.Zone is null or Zone.TipEdge or Zone.TipSides or Zone.TipCorners or Zone.WholeReed or Zone.Opening || trims || IsClip(deed, action))
        {
            return IsSmall(deed.Amount) || (deed.Amount is null && (segment.HasWord("tiny") || segment.HasWord("micro") || segment.HasWord("tiniest"))) ? "clip-hair" : "clip";
        }

        if (IsFurther(deed, action) is { } further)
        {
            return further;
        }

        if (deed.Object?.Zone is Zone.Wire && segment.Word(deed.Verb?.First ?? -1) is "wound" or "wind" or "winding" or "put" or "tied" or "tie" or "fitted" or "fit" or "added" or "wrapped" or "twisted" && segment.HasWord("on") | segment.HasWord("round") | segment.HasWord("around") | segment.HasWord("a"))
        {
            return "add-wire";
        }

        return Tabled(deed, action);
    }

    /// <summary>A wire that is nipped is bent; blades that are clipped level, or their ends levelled, are set to one another.</summary>
    private static string? OfEnds(DeedParts deed, string action)
    {
        var segment = deed.Segment;
        if (action is "clip" && (deed.Object ?? deed.Course.Pending)?.Zone is Zone.Wire)
        {
            return "bend-wire";
        }

        if (action is "smooth" && deed.Object?.Zone is Zone.TipEdge && deed.Verb is { } levels && segment.Word(levels.First) is "level" or "levelled" or "levelling" && segment.HasWord("line"))
        {
            return "square-tip";
        }

        if (action is "offset" && deed.Part is "side" && deed.Object is null)
        {
            return "even-up";
        }

        if (action is "offset")
        {
            return deed.Object?.Zone is Zone.TipEdge && (segment.HasWord("blade") || segment.HasWord("blades")) ? "offset-tip" : null;
        }

        var level = action is "clip" && deed.Blade is not null && deed.Course.Segments.Any(other => other.Sentence == segment.Sentence && other.HasWord("level") | other.HasWord("flush") | other.HasWord("even")
            && other.Has(Cat.Blade) && !ReferenceEquals(other, segment) | (other.HasWord("with") || other.HasWord("to")));
        return level ? "offset-tip" : null;
    }

    private static string Tabled(DeedParts deed, string action)
    {
        if (deed.Segment.HasWord("lay") && deed.Target?.Zone is Zone.WindowBase)
        {
            return DeedTable.Kind(action, "lay-base") ?? "scrape-lay-base";
        }

        if (deed.Thing is "abrasive" && deed.Target?.Zone is { } ground && DeedTable.Specific("sand", ground.ToString()) is { } sanded)
        {
            return sanded;
        }

        if (action is "seal" && deed.Object is null && deed.Thing is null && deed.Verb is { } waxes && deed.Segment.Word(waxes.First) is "wax" or "waxed" or "beeswax" or "beeswaxed" or "varnish" or "varnished" or "lacquered" && deed.Course.Topic?.Zone is null or not Zone.SideEdges)
        {
            return "seal-thread";
        }

        if (deed.Thing is { } thing && (DeedTable.Specific(action, thing) ?? DeedTable.Specific("light", thing)) is { } withThing)
        {
            return withThing;
        }

        if (deed.Object is null && deed.Part is null && (deed.Pronoun || deed.Side is not null) && deed.Course.Topic is { HasPlace: true } topic && DeedTable.Specific(action, topic.Region ?? topic.Zone!.Value.ToString()) is { } ofTopic)
        {
            return ofTopic;
        }

        foreach (var key in Keys(deed))
        {
            if (DeedTable.Kind(action, key) is { } kind)
            {
                return kind == "retie" && action is "tie" && deed.Thing is "fishskin" ? "seal-sides" : kind;
            }
        }

        return "something-else";
    }

    /// <summary>“Brought the heavier left side down to match the right”.</summary>
    internal static bool IsToMatch(DeedParts deed) => deed.Course.Segment.HasWord("match") || deed.Course.Segment.HasWord("balance") || deed.Course.Segment.HasWord("equal") || deed.Course.Segment.HasWord("meet") || (deed.Course.Segment.HasWord("level") && deed.Action is "take") || deed.Course.Segment.HasWord("even");

    // “Took the wire off again”: the trade has no name for it.
    private static bool IsUndone(DeedParts deed) => (deed.Object?.Zone is Zone.Wire or Zone.Cork || deed.Thing is "fishskin") && deed.Verb is { } verb
        && (deed.Segment.Word(verb.First) is "undo" or "undid" or "undone" or "undoing" or "remove" or "removed" or "removing" or "strip" or "stripped" or "unpicked" or "detached"
            || (deed.Segment.HasWord("off") && deed.Action is "take" or "realign" or "clip" or "light" or "other"));

    // A length off the tip or its end is clipped; a thickness is scraped.
    private static bool IsClip(DeedParts deed, string action) => (action is "take" || (action is "scrape" && deed.Amount is { Mm: not null } && (deed.Segment.HasWord("remove") || deed.Segment.HasWord("removed") || deed.Segment.HasWord("removing") || deed.Segment.HasWord("shaved")))) && deed.Thing is null && (deed.Object is { Region: "tip", OneSide: null } or { Zone: Zone.TipEdge } || (deed.Target is null && deed.Amount is { Mm: not null })) && deed.Amount is { } amount
        && (amount.Mm is not null || (amount.Words is { } words && words.Split(' ')[^1] is "hair" or "whisker" or "sliver")) && deed.Segment.Has(Cat.Off) && deed.Part is null;

    /// <summary>“Took the windows down a millimetre”, “moved the rooftop back”.</summary>
    internal static string? IsFurther(DeedParts deed, string action)
    {
        var segment = deed.Segment;
        var moved = action is "take" or "realign" or "define" or "other" or "light" || (action is "scrape" or "open" && (segment.HasWord("further") || segment.HasWord("lower")) && (segment.HasWord("down") || segment.HasWord("back") || segment.HasWord("lower")));
        if (deed.Object?.Zone is Zone.Windows or Zone.WindowBase && moved
            && (deed.Amount is { Mm: not null } || segment.HasWord("further") || segment.HasWord("towards") || segment.HasWord("toward") || (segment.HasWord("down") && segment.Has(Cat.Zone, "Bark"))))
        {
            return "extend-windows";
        }

        if (deed.Object?.Zone is Zone.TipEdge && segment.HasWord("line") && moved && (segment.HasWord("back") || segment.HasWord("down")))
        {
            return "lengthen-tip";
        }

        return deed.Object?.Zone is Zone.Rooftop && moved && (segment.HasWord("back") || segment.HasWord("lower") || segment.HasWord("further") || segment.HasWord("down")) && !segment.Has(Cat.Stroke)
            ? "lengthen-tip"
            : null;
    }

    private static IEnumerable<string> Keys(DeedParts deed)
    {
        if (deed.Thing is not null)
        {
            yield return deed.Thing;
        }

        if (deed.Object is null && deed.Action is "smooth" && deed.Course.Last is { Kind: EntryKind.Finding, Slots.Kind: "bumps" })
        {
            yield return "bump";
        }

        if (deed.Segment.Has(Cat.Quality, "bump") && !(deed.Action is "smooth" && deed.Target?.Zone is Zone.TipEdge))
        {
            yield return "bump";
        }

        if (deed.Part is "side" && deed.Object is null && deed.Action is "sand")
        {
            yield return "SideEdges";
        }

        if (deed.Part is "face" || (deed.Part is "side" && deed.Object is null))
        {
            yield return deed.Part;
        }

        yield return deed.Target is { Region: { } region } target
            ? target.OneSide is null ? region : region switch
            {
                "heart" => "HeartSides",
                "tip" => "TipSides",
                _ => region,
            }
            : deed.Target?.Zone?.ToString() ?? "-";
    }
}
