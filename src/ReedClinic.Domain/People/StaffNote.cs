namespace ReedClinic.Domain.People;

/// <summary>What those who work here note of a student for themselves. It never reaches the student in any form.</summary>
public sealed class StaffNote
{
    /// <summary>The longest note, in UTF-16 characters.</summary>
    public const int Longest = 4_000;

    // For the database, which sets every property.
    private StaffNote()
    {
    }

    /// <summary>Begins one.</summary>
    /// <param name="student">Of whom.</param>
    public StaffNote(StudentId student) => Student = student;

    /// <summary>Of whom.</summary>
    public StudentId Student { get; private set; }

    /// <summary>The words.</summary>
    public string Words { get; private set; } = "";

    /// <summary>Who wrote them.</summary>
    public AccountId WrittenBy { get; private set; }

    /// <summary>When.</summary>
    public DateTimeOffset WrittenAt { get; private set; }

    /// <summary>Changes with every save.</summary>
    public Guid Version { get; private set; }

    /// <summary>Writes it anew.</summary>
    /// <param name="words">The words.</param>
    /// <param name="by">Who writes.</param>
    /// <param name="now">When.</param>
    public void Write(string words, AccountId by, DateTimeOffset now)
    {
        Words = words;
        WrittenBy = by;
        WrittenAt = now;
    }
}
