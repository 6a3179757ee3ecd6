using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Data.Conversions;

/// <summary>The units of pitch are stored as their plain number: hertz, cents, semitones above C.</summary>
internal static class PitchConverters
{
    public static void AddTo(ModelConfigurationBuilder conventions)
    {
        conventions.Properties<Hertz>().HaveConversion<HertzConverter>();
        conventions.Properties<Cents>().HaveConversion<CentsConverter>();
        conventions.Properties<Tuning>().HaveConversion<TuningConverter>();
        conventions.Properties<PitchClass>().HaveConversion<PitchClassConverter>();
    }

    private sealed class HertzConverter() : ValueConverter<Hertz, double>(hertz => hertz.Value, stored => new Hertz(stored));

    private sealed class CentsConverter() : ValueConverter<Cents, double>(cents => cents.Value, stored => new Cents(stored));

    private sealed class TuningConverter() : ValueConverter<Tuning, double>(
        tuning => tuning.A4.Value, stored => new Tuning(new Hertz(stored)));

    private sealed class PitchClassConverter() : ValueConverter<PitchClass, int>(
        pitch => pitch.Value, stored => new PitchClass(stored));
}
