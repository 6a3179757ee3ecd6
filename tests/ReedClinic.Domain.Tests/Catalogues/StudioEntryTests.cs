using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Catalogues;

public sealed class StudioEntryTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero);

    private static readonly StudioEntryWords Frayed = new(StudioEntryKind.Fault, "fibres lifted at the tip", "tiny hairs of cane stand up at the very end")
    {
        Zone = Zone.TipEdge,
        SeenBy = new TestCardId("look-plaque"),
        Signs = [new SignId("hisses")],
        Steps = [new AdjustmentKindId("smooth-bumps")],
    };

    private static readonly StudioEntryWords Polish = new(StudioEntryKind.Adjustment, "rub the tip on paper", "It lays the fibres down.")
    {
        Zone = Zone.TipEdge,
        Undo = Reversible.No,
        Caution = "Twice is too much",
    };

    private static readonly StudioEntryWords Straw = new(StudioEntryKind.Test, "listen through a straw", "Hold a straw to the thread and blow softly.")
    {
        Right = "Nothing is heard",
        Shows = "air hums at the thread",
        Causes = [new CauseId("thread-leak")],
    };

    [Fact]
    public void A_fault_is_found_at_the_bench_weighed_as_a_cause_and_marked_as_the_studios_own()
    {
        var entry = Made(Frayed);
        var catalogue = StudioCatalogue.Of([entry]);
        var cause = catalogue.Find(new CauseId(entry.Key))!;

        Assert.Equal(("Tiny hairs of cane stand up at the very end.", Evidence.StudioOwn), (cause.Line, cause.Mark.Evidence));
        Assert.Equal(Evidence.OwnDefault, cause.Prior.Mark.Evidence);
        Assert.All(catalogue.LinksOf(cause.Id), link => Assert.Equal((Evidence.StudioOwn, Evidence.OwnDefault), (link.Mark.Evidence, link.Strength.Mark.Evidence)));
        var seen = LikelyCauses.Of(catalogue, [new Sighting(new SignId(entry.Key), true)]);
        Assert.Equal(entry.Key, seen.Causes[0].Cause.Id.Value);
        Assert.Equal("fibres lifted at the tip", Assert.Single(catalogue.Own.Findings).Name);
        Assert.Equal(catalogue.Causes.Count - 1, Catalogue.Shipped.Causes.Count);
    }

    [Fact]
    public void An_adjustment_and_a_test_stand_beside_the_shipped_ones_and_a_fault_may_ask_for_the_adjustment()
    {
        var (polish, straw) = (Made(Polish), Made(Straw));
        var fault = Value(StudioEntry.Of(NewId(), Frayed with { Steps = [new AdjustmentKindId(polish.Key)] }, [polish, straw], default, Now));
        var catalogue = StudioCatalogue.Of([fault, straw, polish]);

        Assert.True(catalogue.Own.Find(new AdjustmentKindId(polish.Key)) is { Reversible: Reversible.No, Caution: "Twice is too much." });
        Assert.True(new AdjustmentKindId(polish.Key).TakesAway && !new AdjustmentKindId(Made(Polish with { Undo = Reversible.Yes }).Key).TakesAway);
        Assert.Equal(polish.Key, Assert.Single(catalogue.Find(new CauseId(fault.Key))!.Steps).Value);
        Assert.Contains(catalogue.LinksOf(new CauseId("thread-leak")), link => link.Sign.Value == straw.Key);
        Assert.Equal("air hums at the thread", catalogue.Own.NameOf(new FindingKindId(straw.Key)));
        Assert.Equal("Nothing is heard.", catalogue.Find(new TestCardId(straw.Key))!.Right);
    }

    [Theory]
    [InlineData("Name", "Give it a name.", " ", "A line.", null)]
    [InlineData("Name", "comes with the program", "Tip too thick", "A line.", null)]
    [InlineData("Name", "comes with the program", "WORN OUT", "A line.", null)]
    [InlineData("Name", "colon", "tip: odd", "A line.", null)]
    [InlineData("Line", "one sentence", "odd tip", "", null)]
    [InlineData("Signs", "isn’t on the list any more: “no-such-sign”", "odd tip", "A line.", "no-such-sign")]
    public void What_can_not_be_taken_is_told_beside_its_field(string field, string says, string name, string line, string? sign)
    {
        var words = Frayed with { Name = name, Line = line, Signs = sign is null ? [] : [new SignId(sign)] };

        Assert.Contains(Refused(words), problem => problem.Field == field && problem.Message.Contains(says, StringComparison.Ordinal));
    }

    [Fact]
    public void What_its_kind_needs_has_to_be_chosen()
    {
        Assert.Equal(["Zone", "SeenBy", "Steps"], Refused(Frayed with { Zone = null, SeenBy = default, Steps = [] }).Select(problem => problem.Field));
        Assert.Equal(["Caution", "Zone", "Undo"], Refused(Polish with { Zone = null, Caution = null, Undo = null }).Select(problem => problem.Field));
        Assert.Equal(["Right", "Shows", "Causes"], Refused(Straw with { Right = "", Shows = "", Causes = [new CauseId("nothing-known")] }).Select(problem => problem.Field));
        Assert.Contains(Refused(new StudioEntryWords(null, "x", "y")), problem => problem.Field == "Kind");
        Assert.Equal("Line", Assert.Single(Refused(Frayed with { Line = new string('a', 161) })).Field);
    }

    [Fact]
    public void Two_living_entries_never_share_a_name_and_what_was_retired_gives_its_name_free_until_it_comes_back()
    {
        var first = Made(Frayed);
        Assert.Contains("of yours", Assert.Single(Problems(StudioEntry.Of(NewId(), Frayed, [first], default, Now))).Message, StringComparison.Ordinal);

        first.Retire(Now);
        var second = Value(StudioEntry.Of(NewId(), Frayed with { Name = "Fibres lifted at the tip" }, [first], default, Now));
        Assert.Contains("of yours", Assert.Single(first.BringBack([first, second])).Message, StringComparison.Ordinal);
        Assert.NotNull(first.RetiredAt);

        Assert.Empty(second.Rename(Frayed with { Name = "hairs at the tip" }, [first, second], Now.AddHours(1)));
        Assert.Empty(first.BringBack([first, second]));
        Assert.Null(first.RetiredAt);
        Assert.Equal(Now.AddHours(1), second.ChangedAt);
    }

    [Fact]
    public void A_retired_entry_is_offered_nowhere_weighs_nothing_and_is_still_called_by_its_name()
    {
        var (entry, kind) = (Made(Frayed), default(FindingKindId));
        kind = new FindingKindId(entry.Key);
        entry.Retire(Now);
        var catalogue = StudioCatalogue.Of([entry]);

        Assert.Empty(catalogue.Own.Findings);
        Assert.Equal("fibres lifted at the tip (retired)", catalogue.Own.NameOf(kind));
        Assert.DoesNotContain(catalogue.Causes, cause => cause.Id.Value == entry.Key);
        Assert.Contains("no longer used", Assert.Single(LikelyCauses.Of(catalogue, [new Sighting(new SignId(entry.Key), true)]).Remarks, remark => remark.Contains("fibres", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public void An_entry_of_the_log_keeps_what_its_kind_was_called_and_an_unknown_or_retired_kind_is_refused()
    {
        var entry = Made(Frayed);
        var kind = new FindingKindId(entry.Key);
        var own = StudioCatalogue.Of([entry]).Own;
        var found = Value(Finding.Of(kind, FindingCharacter.Fault, new Place(Zone.TipEdge), words: "left corner"));

        Assert.Equal("fibres lifted at the tip: left corner", ((Finding)Value(own.Named(found, BenchLog.Empty))).Words);
        Assert.Equal("left corner", OwnId.Remark(kind.Value, "fibres lifted at the tip: left corner"));
        Assert.Null(OwnId.Remark(kind.Value, "fibres lifted at the tip"));
        Assert.Equal("a: b", OwnId.Remark("something-else", "a: b"));
        Assert.Contains("isn’t on the list", Assert.Single(Problems(OwnKinds.None.Named(found, BenchLog.Empty))).Message, StringComparison.Ordinal);

        entry.Retire(Now);
        Assert.Contains("was retired", Assert.Single(Problems(StudioCatalogue.Of([entry]).Own.Named(found, BenchLog.Empty))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_is_nothing_but_its_name_is_heard()
    {
        var (fault, polish) = (Made(Frayed), Made(Polish));
        var own = StudioCatalogue.Of([fault, polish]).Own;

        Assert.Equal((fault.Key, Zone.TipEdge, fault.Name), own.Hear(" Fibres lifted at the tip. ") is Finding found ? (found.FindingKind.Value, found.Zone, found.Words) : default);
        Assert.Equal(fault.Key, Assert.IsType<LookedFor>(own.Hear("no fibres lifted at the tip")).FindingKind.Value);
        Assert.Equal(polish.Key, Assert.IsType<Adjustment>(own.Hear("rub the tip on paper")).AdjustmentKind.Value);
        Assert.Null(own.Hear("fibres lifted at the tip, I think"));
        Assert.Null(own.Hear(""));
        Assert.Equal(fault.Name, ((Finding)Value(own.Named(own.Hear(fault.Name)!, BenchLog.Empty))).Words);
    }

    [Fact]
    public void An_entry_that_does_not_fit_any_more_takes_no_other_with_it()
    {
        var (odd, good) = (Made(Straw), Made(Frayed));

        // As it would be if a later version of the program shipped an entry of the same name.
        Assert.Empty(odd.Rename(Straw with { Shows = "something odd" }, [odd], Now));
        typeof(StudioEntry).GetProperty(nameof(StudioEntry.Name))!.SetValue(odd, Catalogue.Shipped.Tests[0].Name);
        var catalogue = StudioCatalogue.Of([odd, good]);

        Assert.NotNull(catalogue.Find(new CauseId(good.Key)));
        Assert.Null(catalogue.Find(new TestCardId(odd.Key)));
        Assert.Equal("something odd", catalogue.Own.NameOf(new FindingKindId(odd.Key)));
        Assert.Equal(Catalogue.Shipped.Tests.Count, catalogue.Tests.Count);
    }

    [Fact]
    public void Beside_an_entry_that_does_not_fit_a_fault_that_shows_by_an_own_test_is_weighed_and_what_is_not_is_told_by_name()
    {
        var straw = Made(Straw);
        var whisper = Value(StudioEntry.Of(NewId(), Frayed with { Name = "loose last turn", SeenBy = new TestCardId(straw.Key) }, [straw], default, Now));
        var (odd, resting) = (Made(Straw with { Name = "listen at the cork", Shows = "it hums at the cork" }), Made(Frayed));
        var needs = Value(StudioEntry.Of(NewId(), Frayed with { Name = "humming cork", SeenBy = new TestCardId(odd.Key) }, [odd], default, Now));
        typeof(StudioEntry).GetProperty(nameof(StudioEntry.Name))!.SetValue(odd, Catalogue.Shipped.Tests[0].Name);
        var catalogue = StudioCatalogue.Of([needs, odd, whisper, straw, resting]);

        Assert.NotNull(catalogue.Find(new CauseId(whisper.Key)));
        Assert.NotNull(catalogue.Find(new CauseId(resting.Key)));
        Assert.Equal([odd.Key, needs.Key], catalogue.Own.LeftOut.Keys.OrderBy(key => key == needs.Key));
        Assert.Equal($"There is another entry called “{odd.Name}”.", catalogue.Own.LeftOut[odd.Key]);
        Assert.Equal($"There is no test “{odd.Name}”.", catalogue.Own.LeftOut[needs.Key]);
        Assert.Empty(StudioCatalogue.Of([whisper, straw, resting]).Own.LeftOut);
    }

    [Theory]
    [InlineData("corners of the tip too thick", "“tip corners too thick”")]
    [InlineData("no leak at the sides", "leak")]
    [InlineData("clip a hair off the tip", "clip")]
    public void A_name_that_the_bench_understands_already_is_refused_with_what_it_is(string name, string known)
    {
        var problem = Assert.Single(Refused(Frayed with { Name = name }));

        Assert.Equal("Name", problem.Field);
        Assert.Contains("is understood already, as", problem.Message, StringComparison.Ordinal);
        Assert.Contains(known, problem.Message, StringComparison.Ordinal);
        Assert.Equal("Shows", Assert.Single(Refused(Straw with { Shows = name })).Field);
        Assert.IsType<Outcome<StudioEntry>.Done>(StudioEntry.Of(NewId(), Straw with { Name = name }, [], default, Now));
    }

    [Theory]
    [InlineData("fibres lifted at the tip")]
    [InlineData("rub the tip on paper")]
    [InlineData("air hums at the thread")]
    [InlineData("hairs at the tip")]
    [InlineData("threads of cane")]
    [InlineData("gapped shoulders")]
    [InlineData("tease the thread up")]
    [InlineData("tap it dry")]
    [InlineData("soft spot in the heart")]
    public void A_name_of_which_a_word_is_new_is_taken(string name) =>
        Assert.IsType<Outcome<StudioEntry>.Done>(StudioEntry.Of(NewId(), Frayed with { Name = name }, [], default, Now));

    [Fact]
    public void An_entry_that_has_such_a_name_since_long_can_still_be_told_better_and_brought_back()
    {
        var entry = Made(Frayed);
        typeof(StudioEntry).GetProperty(nameof(StudioEntry.Name))!.SetValue(entry, "corners of the tip too thick");

        Assert.Empty(entry.Rename(Frayed with { Name = entry.Name, Line = "Otherwise told." }, [entry], Now));
        entry.Retire(Now);
        Assert.Empty(entry.BringBack([entry]));
    }

    [Fact]
    public void No_shipped_entry_has_a_name_that_an_own_one_could_take()
    {
        var shipped = Catalogue.Shipped;
        Assert.DoesNotContain(
            shipped.Causes.Select(one => one.Id.Value).Concat(shipped.Signs.Select(one => one.Id.Value)).Concat(shipped.Tests.Select(one => one.Id.Value))
                .Concat(shipped.Adjustments.Select(one => one.Id.Value)).Concat(FindingCatalogue.All.Select(one => one.Id.Value)).Concat(AdjustmentCatalogue.All.Select(one => one.Id.Value)),
            OwnId.Is);
    }

    private static StudioEntryId NewId() => new(Guid.CreateVersion7(Now));

    private static StudioEntry Made(StudioEntryWords words) => Value(StudioEntry.Of(NewId(), words, [], new AccountId(Guid.CreateVersion7(Now)), Now));

    private static IReadOnlyList<Problem> Refused(StudioEntryWords words) => Problems(StudioEntry.Of(NewId(), words, [], default, Now));

    private static IReadOnlyList<Problem> Problems<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Refused>(outcome).Problems;

    private static T Value<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;
}
