namespace ReedClinic.Data.Engine;

/// <summary>The records have a schema that this build doesn't know: a newer one made it. Nothing was changed; the message says what to do.</summary>
public sealed class NewerSchemaException : Exception
{
    /// <summary>Says so.</summary>
    /// <param name="unknown">The newest migration of the records that this build hasn't.</param>
    public NewerSchemaException(string unknown)
        : base($"A newer version of this program has changed the schema of the records ({unknown}), and this version doesn’t know it. Nothing was opened and nothing was changed. Start that version, or one newer still; or, to go on with this one, restore the back-up that was made before the change: docs/operations/upgrade.md says how under “The way back”.")
    {
    }
}
