namespace ReedClinic.Documents.Setting;

/// <summary>Keeps the items of lists together: two at a list's beginning and at its end, and an only one with what stands before it.</summary>
internal static class ListKeeping
{
    private const double MostForAnItem = 1 / 3.0; // rather than that it stands alone at the head of a page

    /// <summary>The same pieces; those that must stay with the next one say so.</summary>
    /// <param name="flow">The pieces of a document.</param>
    public static IReadOnlyList<FlowItem> Of(IReadOnlyList<FlowItem> flow)
    {
        List<FlowItem> kept = [];
        for (var at = 0; at < flow.Count; at++)
        {
            if (flow[at] is FlowTogether together)
            {
                kept.Add(together with { Items = Of(together.Items) });
            }
            else if (flow[at] is FlowBeside beside)
            {
                kept.Add(beside with { Below = Of(beside.Below) });
            }
            else if (flow[at] is FlowOpen { Role: FlowRole.List })
            {
                List<FlowItem> list = [.. flow.Skip(at).TakeWhile(item => item is not FlowClose), new FlowClose()];
                Add(kept, list);
                at += list.Count - 1;
            }
            else
            {
                kept.Add(flow[at]);
            }
        }

        return kept;
    }

    private static void Add(List<FlowItem> kept, List<FlowItem> list)
    {
        List<int> items = [.. Enumerable.Range(0, list.Count).Where(at => list[at] is FlowText { Role: FlowRole.ItemBody })];
        foreach (var at in items.SkipLast(1).Where((_, index) => index == 0 || index == items.Count - 2).ToList())
        {
            list[at] = (FlowText)list[at] with { KeepsWithNext = true };
        }

        if (items.Count == 1 && kept is [.., FlowText before])
        {
            kept[^1] = before with { KeepsWithNext = true };
        }
        else if (items.Count == 1 && kept is [.., FlowTogether together])
        {
            kept[^1] = With(together, list);
            return;
        }

        else if (items.Count == 1 && kept is [.., FlowBeside beside])
        {
            kept[^1] = new FlowTogether([beside, .. list]) { MostLost = MostForAnItem, IsLoose = beside.IsLoose };
            return;
        }

        kept.AddRange(list);
    }

    // With the last of them, where that is kept together itself.
    private static FlowTogether With(FlowTogether together, List<FlowItem> list) => together.Items is [.., FlowTogether last]
        ? together with { Items = [.. together.Items.SkipLast(1), With(last, list)], MostLost = MostForAnItem }
        : together with { Items = [.. together.Items, .. list], MostLost = MostForAnItem };
}
