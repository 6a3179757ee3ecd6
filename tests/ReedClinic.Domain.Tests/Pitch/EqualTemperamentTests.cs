using CsCheck;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Tests.Pitch;

/// <remarks>
/// Outside checks. ISO 16:1975 sets A4 = 440 Hz. The MIDI 1.0 specification numbers middle C as 60, so that A4 is 69.
/// Frequencies follow from f = A4 · 2^((n − 69)/12); the 440 Hz column is the one found in any handbook's table of
/// equal temperament (C6 = 1046.502 Hz), the 442 Hz column is the same formula worked out apart from this program.
/// </remarks>
public sealed class EqualTemperamentTests
{
    private static readonly Tuning At442 = new(new Hertz(442));

    [Theory]
    [InlineData(58, 233.082, 234.141)]
    [InlineData(60, 261.626, 262.815)]
    [InlineData(69, 440.000, 442.000)]
    [InlineData(70, 466.164, 468.283)]
    [InlineData(71, 493.883, 496.128)]
    [InlineData(72, 523.251, 525.630)]
    [InlineData(73, 554.365, 556.885)]
    [InlineData(81, 880.000, 884.000)]
    [InlineData(82, 932.328, 936.565)]
    [InlineData(83, 987.767, 992.256)]
    [InlineData(84, 1046.502, 1051.259)]
    [InlineData(85, 1108.731, 1113.770)]
    [InlineData(86, 1174.659, 1179.998)]
    [InlineData(89, 1396.913, 1403.263)]
    public void The_printed_tables_for_440_and_442_are_met(int midi, double at440, double at442)
    {
        Assert.Equal(at440, EqualTemperament.FrequencyOf(midi, Tuning.Standard).Value, 0.0005);
        Assert.Equal(at442, EqualTemperament.FrequencyOf(midi, At442).Value, 0.0005);
        Assert.Equal(midi, EqualTemperament.MidiOf(new Hertz(at440), Tuning.Standard), 0.0001);
    }

    [Theory]
    [InlineData(442, 7.851)]
    [InlineData(441, 3.930)]
    [InlineData(443, 11.764)]
    [InlineData(415, -101.271)]
    public void Another_A_lies_this_many_cents_from_440(double a4, double cents) =>
        Assert.Equal(cents, EqualTemperament.Between(new Hertz(440), new Hertz(a4)).Value, 0.0006);

    [Fact]
    public void A_note_number_survives_the_way_to_hertz_and_back() =>
        Gen.Select(Gen.Double[0, 127], Gen.Double[380, 500]).Sample((midi, a4) =>
        {
            var tuning = new Tuning(new Hertz(a4));
            Assert.Equal(midi, EqualTemperament.MidiOf(EqualTemperament.FrequencyOf(midi, tuning), tuning), 1e-9);
        });

    [Fact]
    public void Cents_there_and_back_cancel() =>
        Gen.Select(Gen.Double[20, 20000], Gen.Double[20, 20000]).Sample((a, b) =>
            Assert.Equal(
                0, (EqualTemperament.Between(new(a), new(b)) + EqualTemperament.Between(new(b), new(a))).Value, 1e-9));

    [Fact]
    public void Folding_keeps_the_note_and_lands_within_half_an_octave() =>
        Gen.Double[-20000, 20000].Sample(value =>
        {
            var folded = new Cents(value).FoldedToOneOctave.Value;
            Assert.InRange(folded, -600.0000001, 600);
            Assert.Equal(0, Math.IEEERemainder(value - folded, 1200), 1e-6);
        });

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Nonsense_is_no_frequency(double value) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Hertz(value));

    [Theory]
    [InlineData(44)]
    [InlineData(501)]
    public void An_A_far_off_is_a_slip_of_the_finger(double value) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Tuning(new Hertz(value)));

    [Fact]
    public void A_distance_can_be_written_out() => Assert.Equal("-12.5 cents", new Cents(-12.5).ToString());
}
