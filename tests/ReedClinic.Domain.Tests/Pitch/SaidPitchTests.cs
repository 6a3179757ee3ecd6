using System.Reflection;
using System.Text.RegularExpressions;
using CsCheck;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Tests.Pitch;

public sealed class SaidPitchTests
{
    private static readonly CrowTarget OnC = CrowTarget.OnC(Tuning.Standard);

    [Theory]
    [InlineData("C", 0, 0, null, "a C")]
    [InlineData("B♭ +10", 10, 10, null, "a B♭, 10 cents sharp")]
    [InlineData("C6 -15", 0, -15, 6, "a C6, 15 cents flat")]
    [InlineData("C6 −15", 0, -15, 6, "a C6, 15 cents flat")]
    [InlineData("C-15", 0, -15, null, "a C, 15 cents flat")]
    [InlineData("Bb", 10, 0, null, "a B♭")]
    [InlineData("bb", 10, 0, null, "a B♭")]
    [InlineData("b", 11, 0, null, "a B")]
    [InlineData("c#5 +5c", 1, 5, 5, "a C♯5, 5 cents sharp")]
    [InlineData("C♯5+5 cents", 1, 5, 5, "a C♯5, 5 cents sharp")]
    [InlineData("D flat", 1, 0, null, "a C♯")]
    [InlineData("F sharp 4", 6, 0, 4, "an F♯4")]
    [InlineData("a flat", 8, 0, null, "an A♭")]
    [InlineData("A", 9, 0, null, "an A")]
    [InlineData("C 5", 0, 0, 5, "a C5")]
    [InlineData("C 5 flat", 0, -5, null, "a C, 5 cents flat")]
    [InlineData("C 5 cents sharp", 0, 5, null, "a C, 5 cents sharp")]
    [InlineData("a C, 15 cents flat", 0, -15, null, "a C, 15 cents flat")]
    [InlineData("C ±0", 0, 0, null, "a C")]
    [InlineData("C +2.5", 0, 2.5, null, "a C, 2.5 cents sharp")]
    [InlineData("C +1", 0, 1, null, "a C, 1 cent sharp")]
    [InlineData("B#5", 0, 0, 6, "a C6")]
    [InlineData("Cb6", 11, 0, 5, "a B5")]
    [InlineData("  c   6   -  15 ", 0, -15, 6, "a C6, 15 cents flat")]
    public void A_pitch_is_read_as_musicians_write_it(string text, int pitchClass, double cents, int? octave, string shown)
    {
        var pitch = Read(text);

        Assert.Equal(pitchClass, pitch.PitchClass.Value);
        Assert.Equal(cents, pitch.Cents.Value);
        Assert.Equal(octave, pitch.Octave);
        Assert.Null(pitch.Between);
        Assert.Equal(shown, pitch.Show());
        Assert.Equal(text.Trim(), pitch.Text);
        Assert.Equal(440, pitch.A4.Value);
    }

    [Theory]
    [InlineData("flat C", 0, null, PitchLean.Flat, "a C, a little flat")]
    [InlineData("a flat C", 0, null, PitchLean.Flat, "a C, a little flat")]
    [InlineData("a slightly flat C5", 0, 5, PitchLean.Flat, "a C5, a little flat")]
    [InlineData("sharp C", 0, null, PitchLean.Sharp, "a C, a little sharp")]
    [InlineData("C flattish", 0, null, PitchLean.Flat, "a C, a little flat")]
    [InlineData("C a bit low", 0, null, PitchLean.Flat, "a C, a little flat")]
    [InlineData("C, flat", 0, null, PitchLean.Flat, "a C, a little flat")]
    [InlineData("C on the low side", 0, null, PitchLean.Flat, "a C, a little flat")]
    [InlineData("a C, a little sharp", 0, null, PitchLean.Sharp, "a C, a little sharp")]
    [InlineData("C 5 a hair high", 0, 5, PitchLean.Sharp, "a C5, a little sharp")]
    [InlineData("flat B flat", 10, null, PitchLean.Flat, "a B♭, a little flat")]
    [InlineData("B flat, a bit sharp", 10, null, PitchLean.Sharp, "a B♭, a little sharp")]
    [InlineData("a flat b", 11, null, PitchLean.Flat, "a B, a little flat")]
    [InlineData("B flattish", 11, null, PitchLean.Flat, "a B, a little flat")]
    public void A_note_a_little_off_leans_without_a_number(string text, int note, int? octave, PitchLean lean, string shown)
    {
        var pitch = Read(text);

        Assert.Equal((note, octave, lean, 0.0), (pitch.PitchClass.Value, pitch.Octave, pitch.Lean, pitch.Cents.Value));
        Assert.Equal(shown, pitch.Show());
        Assert.Equal(text, pitch.Text);
        Assert.Null(pitch.Frequency);
    }

    [Theory]
    [InlineData("B flat", 10)]
    [InlineData("E flat", 3)]
    [InlineData("e flat 5", 3)]
    [InlineData("a flat", 8)]
    [InlineData("D sharp", 3)]
    [InlineData("C flat", 11)]
    public void A_note_whose_name_has_flat_or_sharp_in_it_stays_a_note(string text, int note)
    {
        Assert.Equal(note, Read(text).PitchClass.Value);
        Assert.Null(Read(text).Lean);
    }

    [Theory]
    [InlineData("low C")]
    [InlineData("high C")]
    [InlineData("C low")]
    public void Low_and_high_alone_may_mean_the_octave_and_are_not_guessed_at(string text) =>
        Assert.IsType<Outcome<SaidPitch>.Refused>(SaidPitch.Read(text, Tuning.Standard));

    [Theory]
    [InlineData("flat C", -50, 0)]
    [InlineData("sharp C", 0, 50)]
    [InlineData("flat B", -150, -100)]
    [InlineData("flat F#", 550, 600)]
    [InlineData("sharp F#", -600, -550)]
    public void A_lean_is_a_range_of_half_a_semitone(string text, double low, double high)
    {
        var range = Read(text).Against(OnC);

        Assert.Equal((low, high), (range.Low.Value, range.High.Value));
        Assert.False(range.IsOnePitch);
    }

    [Fact]
    public void A_lean_has_no_number_and_lies_between_no_notes()
    {
        Assert.Throws<ArgumentException>(() =>
            new SaidPitch("", PitchClass.C, new Cents(5), null, null, new Hertz(440), PitchLean.Flat));
        Assert.Throws<ArgumentException>(() =>
            new SaidPitch("", PitchClass.C, Cents.Zero, null, new PitchClass(1), new Hertz(440), PitchLean.Flat));
    }

    [Theory]
    [InlineData("between B and C", 11, 0, null, "between B and C")]
    [InlineData("between C and B", 11, 0, null, "between B and C")]
    [InlineData("Between a Bb5 and a C6", 10, 0, 5, "between B♭5 and C6")]
    [InlineData("between B5 and C", 11, 0, 5, "between B5 and C6")]
    [InlineData("between A and B", 9, 11, null, "between A and B")]
    public void A_pitch_between_two_notes_keeps_both(string text, int low, int high, int? octave, string shown)
    {
        var pitch = Read(text);

        Assert.Equal(low, pitch.PitchClass.Value);
        Assert.Equal(high, pitch.Between?.Value);
        Assert.Equal(octave, pitch.Octave);
        Assert.Equal(shown, pitch.Show());
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("H")]
    [InlineData("C 15")]
    [InlineData("C +100")]
    [InlineData("C9")]
    [InlineData("Cx")]
    [InlineData("rather flat")]
    [InlineData("between C and C")]
    [InlineData("between C and F#")]
    [InlineData("between B5 and C5")]
    [InlineData("<script>")]
    [InlineData("C\0")]
    [InlineData("C6 -15 and then a great deal more than anybody would say")]
    public void What_cannot_be_read_gives_a_problem_with_examples(string text)
    {
        var refused = Assert.IsType<Outcome<SaidPitch>.Refused>(SaidPitch.Read(text, Tuning.Standard, "crow"));

        var problem = Assert.Single(refused.Problems);
        Assert.Equal("crow", problem.Field);
        Assert.Contains("B♭ +10", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("C6 -15", -15, -15)]
    [InlineData("C4 -15", -15, -15)]
    [InlineData("B +90", -10, -10)]
    [InlineData("C# -20", 80, 80)]
    [InlineData("F#", 600, 600)]
    [InlineData("between B and C", -100, 0)]
    [InlineData("between C and C#", 0, 100)]
    [InlineData("between F# and G", -600, -500)]
    [InlineData("between F and F#", 500, 600)]
    public void Cents_are_counted_from_a_crow_on_C_with_octaves_folded(string text, double low, double high)
    {
        var range = Read(text).Against(OnC);

        Assert.Equal(low, range.Low.Value, 1e-9);
        Assert.Equal(high, range.High.Value, 1e-9);
    }

    [Fact]
    public void A_pitch_heard_at_440_stays_what_it_was_for_somebody_who_tunes_to_442() =>
        Assert.Equal(-7.851, Read("C").Against(CrowTarget.OnC(new Tuning(new Hertz(442)))).Middle.Value, 0.0005);

    [Fact]
    public void A_pitch_with_its_octave_has_a_frequency()
    {
        Assert.Equal(1046.502, Read("C6").Frequency!.Value.Value, 0.0005);
        Assert.Equal(233.082, Read("Bb3").Frequency!.Value.Value, 0.0005);
        Assert.Null(Read("C").Frequency);
        Assert.Null(Read("between B5 and C6").Frequency);
    }

    [Fact]
    public void What_is_shown_reads_back_as_the_same_pitch() =>
        Gen.Select(Gen.Int[0, 11], Gen.Int[-99, 99], Gen.Int[0, 8].Nullable(), Gen.Int[1, 5].Nullable(), Gen.Enum<PitchLean>().Nullable())
            .Sample((note, cents, octave, width, lean) =>
            {
                var between = width is { } w ? PitchClass.OfMidi(note + w) : (PitchClass?)null;
                if (between is not null && octave == 8)
                {
                    octave = 7;
                }

                lean = between is null ? lean : null;
                var said = new SaidPitch(
                    "", new PitchClass(note), new Cents(between is null && lean is null ? cents : 0), octave, between, new Hertz(440), lean);
                Assert.Equal(said, Read(said.Show()) with { Text = "" });
            });

    [Fact]
    public void Any_text_at_all_is_read_or_refused_and_never_breaks() =>
        Gen.String.Sample(text => SaidPitch.Read(text, Tuning.Standard) is not null);

    // A pattern's time limit goes by the clock: when a busy machine stalls, it runs out in the middle of somebody's typing.
    [Fact]
    public void No_pattern_repeats_without_end_so_none_needs_a_time_limit()
    {
        var reader = typeof(SaidPitch).Assembly.GetType("ReedClinic.Domain.Pitch.SaidPitchReader", throwOnError: true)!;
        List<Regex> patterns = [.. reader.GetFields(BindingFlags.Static | BindingFlags.NonPublic).Select(field => field.GetValue(null)).OfType<Regex>()];

        Assert.NotEmpty(patterns);
        Assert.All(patterns, pattern => Assert.Equal(Regex.InfiniteMatchTimeout, pattern.MatchTimeout));
        Assert.All(patterns, pattern => Assert.DoesNotMatch(@"(?<![\\\[])[*+]|\{\d+,\}", pattern.ToString()));
    }

    private static SaidPitch Read(string text) =>
        Assert.IsType<Outcome<SaidPitch>.Done>(SaidPitch.Read(text, Tuning.Standard)).Value;
}
