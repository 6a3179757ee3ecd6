using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Bench;

namespace ReedClinic.Domain.Tests.Diagnosis;

public sealed class SightingsTests
{
    private static readonly Catalogue Shipped = Catalogue.Shipped;

    [Fact]
    public void What_the_student_marked_is_read_and_what_they_left_open_tells_nothing()
    {
        var told = Sightings.Of(Shipped, new ReedScales { Intonation = new ScaleMark(2), Effort = new ScaleMark(-1), Opening = new ScaleMark(0) }).ToList();

        Assert.Equal(6, told.Count); // two ends of three scales
        Assert.Contains(new Sighting(new SignId("whole-sharp"), true, true, Teller.Student), told);
        Assert.Contains(new Sighting(new SignId("whole-flat"), false, false, Teller.Student), told);
        Assert.Contains(new Sighting(new SignId("feels-easy"), true, false, Teller.Student, Slight: true), told); // only a little
        Assert.Contains(new Sighting(new SignId("opening-wide"), false, false, Teller.Student), told);
    }

    [Fact]
    public void A_test_tells_of_each_of_its_signs_whether_it_holds()
    {
        var log = new Writer();
        log.Say(Writer.Test(TestKind.LowResponse, 1));
        var told = Of(log);

        Assert.Contains(told, one => one is { Sign.Value: "low-late", Present: true, Sure: true });
        Assert.Contains(told, one => one is { Sign.Value: "low-refuse", Present: false });
        Assert.Equal(2, told.Count);
    }

    /// <summary>A wide opening may lie behind a flat reed or a small range; those hardly open it, so they take little of it away.</summary>
    [Theory]
    [InlineData(2, 0.4)]
    [InlineData(1, 0.3)]
    public void A_student_who_says_too_open_is_heard_as_telling_that_very_fault(int step, double least)
    {
        var found = LikelyCauses.Of(Shipped, Sightings.Of(Shipped, new ReedScales { Opening = new ScaleMark(step) }));

        Assert.Equal("too-open", found.Causes[0].Cause.Id.Value);
        Assert.InRange(found.Causes[0].Chance, least, 1);
        Assert.InRange(found.Causes[0].Chance, 2 * found.Causes[1].Chance, 1);
    }

    [Fact]
    public void What_is_a_little_so_weighs_more_than_what_is_only_suspected_and_less_than_what_is_plainly_so()
    {
        double Chance(Sighting seen) => LikelyCauses.Of(Shipped, [seen]).Causes.Single(one => one.Cause.Id.Value == "too-open").Chance;
        var wide = new Sighting(new SignId("opening-wide"), true);

        Assert.True(Chance(wide with { Sure = false }) < Chance(wide with { Sure = false, Slight = true }));
        Assert.True(Chance(wide with { Sure = false, Slight = true }) < Chance(wide));
    }

    [Fact]
    public void A_little_open_is_not_a_sure_sign()
    {
        var log = new Writer();
        log.Say(Writer.Test(TestKind.Opening, 3));

        Assert.Contains(Of(log), one => one is { Sign.Value: "opening-wide", Present: true, Sure: false });
    }

    [Theory]
    [InlineData("C#", true, false)]
    [InlineData("B", false, true)]
    [InlineData("C", false, false)]
    public void A_crow_is_high_or_low_against_what_is_aimed_at(string pitch, bool high, bool low)
    {
        var log = new Writer();
        log.Say(Writer.Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Writer.Value(SaidPitch.Read(pitch, Tuning.Standard)))));

        Assert.Equal(high, Of(log).Single(one => one.Sign.Value == "crow-high").Present);
        Assert.Equal(low, Of(log).Single(one => one.Sign.Value == "crow-low").Present);
    }

    [Fact]
    public void Findings_what_was_looked_for_and_strengths_are_read_and_tastes_are_not()
    {
        var log = new Writer();
        log.Say(Found("tip-corners-thick", FindingCharacter.Fault, Certainty.Suspected));
        log.Say(Writer.Value(LookedFor.Of(new FindingKindId("bumps"))));
        log.Say(Found("spine-intact", FindingCharacter.Strength, Certainty.Certain));
        log.Say(Found("opening-wide", FindingCharacter.Taste, Certainty.Certain));
        var told = Of(log);

        Assert.Contains(told, one => one is { Sign.Value: "tip-corners-thick", Present: true, Sure: false });
        Assert.Contains(told, one => one is { Sign.Value: "bumps", Present: false, Sure: true });
        Assert.Contains(told, one => one is { Sign.Value: "spine-scraped", Present: false, Sure: true });
        Assert.Equal(3, told.Count);
    }

    private static Finding Found(string kind, FindingCharacter character, Certainty certainty) =>
        Writer.Value(Finding.Of(new FindingKindId(kind), character, new Place(Zone.TipSides), certainty: certainty));

    private static List<Sighting> Of(Writer log) => [.. Sightings.Of(Shipped, log.Entries, CrowTarget.OnC(Tuning.Standard))];
}
