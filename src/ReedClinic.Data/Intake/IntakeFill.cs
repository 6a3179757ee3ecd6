using System.Globalization;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Intake;

/// <summary>What a new intake begins with: the answers that are asked once per student, and one empty reed.</summary>
internal static class IntakeFill
{
    public static IntakeForm For(Student student) => new()
    {
        Instrument = student.Instrument?.ToString(),
        TunesTo = student.TunesTo?.A4.Value.ToString(CultureInfo.InvariantCulture),
        Scrape = student.Scrape?.ToString(),
        Country = student.Country,
        Reeds = [new ReedForm()],
    };
}
