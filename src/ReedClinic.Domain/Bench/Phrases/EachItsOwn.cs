using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Upper left corner two, lower left three, lower right one”: each place with its own strokes is work of its own.</summary>
internal static class EachItsOwn
{
    internal static void Keep(Course course)
    {
        for (var at = 0; at < course.Drafts.Count; at++)
        {
            var draft = course.Drafts[at];
            var said = Spoken.Whole(course, draft);
            if (draft is not { Kind: EntryKind.Adjustment, Slots: { Mm: null, Words: null } } || Counted(said) is not { Count: > 1 } each || each.DistinctBy(one => (one.Blade, one.Side)).Count() < each.Count)
            {
                continue;
            }

            // What is said of one blade goes for the next side of it.
            course.Drafts.RemoveAt(at);
            var blade = each.TrueForAll(one => one.Blade is null) ? draft.Slots.Blades ?? Only(said) : null;
            foreach (var one in each)
            {
                blade = one.Blade ?? blade;
                var copy = draft.Copy();
                copy.Slots = draft.Slots with { Blades = blade, Sides = one.Side, Strokes = one.Strokes };
                course.Drafts.Insert(at++, copy);
            }

            at--;
        }
    }

    // A side, perhaps with its blade and its part, and a bare number right behind it.
    private static List<(Blades? Blade, Sides Side, int Strokes)> Counted(Segment said)
    {
        List<(Blades?, Sides, int)> each = [];
        for (var at = said.First; at < said.End; at++)
        {
            if (said.Word(at) is not ("left" or "right"))
            {
                continue;
            }

            var number = said.Items.Any(item => item.First == at + 1 && item.Cat is Cat.Zone or Cat.Region or Cat.Part) ? at + 2 : at + 1;
            if (Number(said, number) is { } strokes && (number + 1 >= said.End || said.Tokens[number + 1].Kind is TokenKind.Break || said.Word(number + 1) is "and" or "strokes" or "stroke" or "off" or "left" or "right" or "upper" or "lower" or "then"))
            {
                each.Add((Blade(said, at), said.Word(at) is "left" ? Sides.Left : Sides.Right, strokes));
            }
        }

        return each;
    }

    // “…, lower”: the one blade that is named anywhere in it.
    private static Blades? Only(Segment said) => said.All(Cat.Blade).Select(item => item.Value).Distinct().ToList() switch { ["Upper"] => Blades.Upper, ["Lower"] => Blades.Lower, _ => null };

    private static int? Number(Segment said, int at) => at >= said.End ? null
        : (said.Tokens[at].Kind is TokenKind.Number ? said.Tokens[at].Number : Numbers.Word(said.Word(at))) is { } value and >= 1 and <= 30 && value == decimal.Truncate(value) ? (int)value : null;

    private static Blades? Blade(Segment said, int side) => said.Items.FirstOrDefault(item => item.Cat is Cat.Blade && item.First < side && item.End >= side - 1).Value switch
    {
        "Upper" => Blades.Upper,
        "Lower" => Blades.Lower,
        _ => null,
    };
}
