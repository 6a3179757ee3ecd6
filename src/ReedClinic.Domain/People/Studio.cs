namespace ReedClinic.Domain.People;

/// <summary>The studio itself. One installation is one studio, so there is one row, made when its first owner comes in.</summary>
public sealed class Studio
{
    /// <summary>The only identifier there is: a second studio can't be stored.</summary>
    public const int OnlyId = 1;

    /// <summary>Opens the studio.</summary>
    /// <param name="name">What the studio is called in letters.</param>
    /// <param name="firstOwner">The account that opened it.</param>
    /// <param name="openedAt">When.</param>
    public Studio(string name, AccountId firstOwner, DateTimeOffset openedAt)
    {
        Name = name;
        FirstOwner = firstOwner;
        OpenedAt = openedAt;
    }

    /// <summary>Always <see cref="OnlyId"/>.</summary>
    public int Id { get; private set; } = OnlyId;

    /// <summary>What the studio is called in letters.</summary>
    public string Name { get; private set; }

    /// <summary>The account that opened it.</summary>
    public AccountId FirstOwner { get; private set; }

    /// <summary>When it was opened.</summary>
    public DateTimeOffset OpenedAt { get; private set; }
}
