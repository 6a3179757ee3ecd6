using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What sounds like work, a pitch or a fault and is none, or is the opposite of what was meant; and strokes, parts of a millimetre and a reed that is given up, which were missed.</summary>
public sealed class HeardOtherwiseTests
{
    [Theory]
    [InlineData("sweet and round now")]
    [InlineData("warm and round now")]
    [InlineData("full and round now")]
    [InlineData("dark and round now")]
    [InlineData("mellow and round now")]
    [InlineData("rich and round now")]
    public void A_round_sound_is_no_work_on_the_eye(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Kind is EntryKind.Adjustment);

    [Theory]
    [InlineData("rounded the eye")]
    [InlineData("round it on the mandrel")]
    [InlineData("rounded the tube")]
    public void An_eye_that_was_rounded_was(string phrase) => Assert.Equal("round-eye", Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("there was a leak but it's gone")]
    [InlineData("had a rough edge, that's gone")]
    [InlineData("tip was thick but that's gone now")]
    [InlineData("there was a ridge, gone now")]
    [InlineData("there was a lump in the heart but it's gone now")]
    [InlineData("there was a crack in the tip but that has vanished")]
    public void What_was_there_and_is_gone_is_no_fault_that_stands(string phrase) => Assert.Equal(EntryKind.Note, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("there was a bump on the left")]
    [InlineData("there's a bump, the leak's gone")]
    [InlineData("there was a leak and it isn't gone")]
    public void What_is_there_still_stands(string phrase) => Assert.Contains(Read(phrase), read => read.Kind is EntryKind.Finding);

    [Theory]
    [InlineData("tip could be thinner")]
    [InlineData("tip should be a little thinner")]
    [InlineData("the heart might be fuller")]
    [InlineData("tip needs to be shorter")]
    [InlineData("the back could be lighter")]
    [InlineData("heart should be a bit lighter")]
    public void How_it_ought_to_be_is_not_how_it_is(string phrase) => Assert.Equal(EntryKind.Note, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("tip's too thick, could be thinner", "tip-thick")]
    [InlineData("heart's too thin", "heart-thin")]
    [InlineData("the tip might be too thin", "tip-thin")]
    public void How_it_is_stays_a_finding(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("slow B flat scale, fine")]
    [InlineData("C major scale, clean")]
    [InlineData("played the C scale")]
    [InlineData("F major arpeggio, all there")]
    [InlineData("played a G minor scale")]
    [InlineData("played a C major scale slowly")]
    public void A_scale_that_was_played_is_no_crow(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Test is TestKind.Crow or TestKind.Peep);

    [Theory]
    [InlineData("crows a C")]
    [InlineData("crow is B, after a scale")]
    [InlineData("peeps C")]
    public void A_note_that_is_crowed_or_peeped_is_one(string phrase) => Assert.NotNull(Read(phrase)[0].Slots.Test);

    [Theory]
    [InlineData("tied a bit too long, 72.5", Zone.WholeReed)]
    [InlineData("scrape's too long", Zone.WholeReed)]
    [InlineData("cork's cracked", Zone.Cork)]
    [InlineData("crack in the staple", Zone.Eye)]
    [InlineData("the cork has a crack", Zone.Cork)]
    [InlineData("the staple is cracked", Zone.Eye)]
    public void What_is_said_of_another_part_is_not_the_tip(string phrase, Zone zone) => Assert.Equal(zone, Read(phrase)[0].Slots.Zone);

    [Theory]
    [InlineData("tip's too long", "tip-long")]
    [InlineData("tip too short", "tip-short")]
    [InlineData("crack in the tip", "tip-cracked")]
    public void What_is_said_of_the_tip_is(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("I can see daylight through the heart, too thin", "heart-thin")]
    [InlineData("light comes through the tip, much too thin", "tip-thin")]
    [InlineData("you can see the plaque through the tip, too thin", "tip-thin")]
    [InlineData("can see my finger through the left wing, too thin", "tip-thin")]
    [InlineData("I see light through the back, too thin", "back-thin")]
    [InlineData("can see the lamp through the tip, too thin", "tip-thin")]
    [InlineData("I can see light through the tip, too thin", "tip-thin")]
    [InlineData("too thin at the heart", "heart-thin")]
    [InlineData("tip's too thin", "tip-thin")]
    [InlineData("the back is too thin", "back-thin")]
    public void What_was_looked_through_is_what_is_thin(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Theory]
    [InlineData("upper: three down the ramp", "blend", Blades.Upper, 3)]
    [InlineData("lower: two down the left channel", "open-windows", Blades.Lower, 2)]
    [InlineData("upper, 3 strokes along the ramp", "blend", Blades.Upper, 3)]
    [InlineData("lower blade, four down the heart", "dust-heart", Blades.Lower, 4)]
    [InlineData("bottom blade: two up the ramp", "blend", Blades.Lower, 2)]
    [InlineData("four up the back", "open-windows", null, 4)]
    public void Strokes_down_a_part_are_strokes(string phrase, string kind, Blades? blade, int strokes) => Assert.Equal((EntryKind.Adjustment, kind, blade, strokes), Assert.Single(Read(phrase)) is var read ? (read.Kind, read.Slots.Kind, read.Slots.Blades, read.Slots.Strokes) : default);

    [Theory]
    [InlineData("crow down three")]
    [InlineData("crow three down")]
    [InlineData("C, three down")]
    public void Cents_down_are_cents(string phrase) => Assert.Equal(-3, Assert.Single(Read(phrase)).Slots is var slots ? slots.Cents ?? slots.Change : null);

    [Theory]
    [InlineData("gave up on this", true)]
    [InlineData("I've given up", true)]
    [InlineData("we've given up on it", true)]
    [InlineData("given up on this one", true)]
    [InlineData("so I gave up on that reed", true)]
    [InlineData("I gave up", true)]
    [InlineData("she gave up on it", false)]
    [InlineData("I didn't give up", false)]
    [InlineData("nearly gave up on this", false)]
    public void A_reed_that_is_given_up_is_a_verdict(string phrase, bool isVerdict) => Assert.Equal(isVerdict, Read(phrase).Any(read => read is { Kind: EntryKind.Verdict, Slots.Verdict: VerdictKind.NotToBeSaved }));

    [Theory]
    [InlineData("cut a third of a millimetre off", "clip", 0.33)]
    [InlineData("clip a third of a mm", "clip", 0.33)]
    [InlineData("took a quarter of a mm off the tip", "clip-hair", 0.25)]
    [InlineData("clipped a fifth of a millimetre", "clip-hair", 0.2)]
    [InlineData("clipped half a millimetre", "clip", 0.5)]
    [InlineData("clipped a quarter of a millimetre", "clip-hair", 0.25)]
    [InlineData("clipped a millimetre", "clip", 1)]
    [InlineData("clipped a tenth", "clip-hair", 0.1)]
    [InlineData("clip 0.3 mm", "clip", 0.3)]
    public void A_part_of_a_millimetre_is_no_whole_one(string phrase, string kind, decimal mm) => Assert.Equal((kind, mm), Assert.Single(Read(phrase)).Slots is var slots ? (slots.Kind, slots.Mm) : default);

    [Theory]
    [InlineData("once more")]
    [InlineData("same again")]
    [InlineData("and again on the other blade")]
    [InlineData("twice more")]
    [InlineData("the same again")]
    [InlineData("same on the other blade again")]
    public void Nameless_work_that_is_done_again_needs_some_before(string phrase)
    {
        Assert.DoesNotContain(Read(phrase), read => read.Kind is EntryKind.Adjustment);
        Assert.Contains(Read(phrase, "two strokes off the upper ramp"), read => read.Kind is EntryKind.Adjustment);
    }

    [Theory]
    [InlineData("better already")]
    [InlineData("a lot better already")]
    [InlineData("already much better")]
    public void What_is_only_better_is_no_test(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Kind is EntryKind.Test);

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
